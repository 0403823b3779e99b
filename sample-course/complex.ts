import type { PlanePoint } from '../shared/geometry/points.ts';
import type { AreaKind, LieQuality } from '../shared/words/vocabulary.ts';
import type { Blob } from './outline.ts';
import type { Relief } from './relief.ts';

/** A place told from the green: bearing from its middle (0 is the direction of play) and distance beyond its edge. */
export type FromGreen = readonly [bearing: number, beyondM: number];

/** One invented green and what lies round it, in metres right of and beyond the middle of the green. */
export interface Complex {
  readonly id: string;
  readonly label: string;
  readonly order: number;
  readonly name: string;
  readonly par: number | null;
  /** Where its middle lies in the plane of the atlas, and the true bearing of the direction of play. */
  readonly at: PlanePoint;
  readonly playBearing: number;
  readonly green: Blob;
  readonly fringeM: number;
  readonly relief: Relief;
  readonly areas: readonly ComplexArea[];
  readonly flags: readonly { readonly label: string; readonly name: string; readonly at: PlanePoint }[];
  readonly balls: readonly ComplexBall[];
  /** From the tee to the green; empty on a practice station. */
  readonly line: readonly PlanePoint[];
  readonly seed: number;
}

export interface ComplexArea {
  readonly kind: AreaKind;
  readonly name: string;
  readonly shape:
    | { readonly blob: Blob }
    | { readonly around: readonly FromGreen[] }
    | { readonly corners: readonly PlanePoint[] }
    | { readonly bandAlong: readonly PlanePoint[]; readonly widthM: number };
  readonly lipHeightM?: number;
  readonly treeHeightM?: number;
  readonly canopyBaseM?: number;
}

export interface ComplexBall {
  readonly name: string;
  /** From the green's edge, or at a place. */
  readonly at: FromGreen | PlanePoint;
  readonly lie: LieQuality;
}
