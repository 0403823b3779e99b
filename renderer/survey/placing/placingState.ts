import type { Edit } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { type Affine, sameAsSheet, type SheetPoint } from '../../../shared/geometry/affine.ts';
import type { LocalFrame } from '../../../shared/geometry/localFrame.ts';
import type { PlanePoint } from '../../../shared/geometry/points.ts';
import type { UnitsPreference } from '../../../shared/units/preference.ts';
import type { TroubleWords } from '../../ui/Trouble.tsx';

/** What is being placed: a picture by its pixels, the whole sheet over the plane of another place, or a source of maps. */
export type PlacingSubject =
  | { readonly kind: 'picture'; readonly id: string }
  | { readonly kind: 'sheet'; readonly over: LocalFrame }
  | { readonly kind: 'source'; readonly id: string; readonly name: string };

export const placingWays = ['move', 'points', 'distance'] as const;
export type PlacingWay = (typeof placingWays)[number];

/** A point of the subject and the place where it is known to lie; null until that is given. */
export interface Pair {
  readonly on: SheetPoint;
  readonly at: PlanePoint | null;
}

export interface PlacingState {
  readonly subject: PlacingSubject | null;
  readonly way: PlacingWay;
  /** How the subject lies now, and how it lay when this began. */
  readonly affine: Affine;
  readonly start: Affine;
  /** Its corners on its own sheet; none for what has no edge. */
  readonly outline: readonly SheetPoint[];
  readonly opacity: number;
  readonly pairs: readonly Pair[];
  /** Three and more known points only move, turn and enlarge the picture; without it they stretch it too. */
  readonly keepShape: boolean;
  /** For each pair that is complete, how far it misses; and the root of the mean square where that says anything. */
  readonly missesM: readonly number[];
  readonly rmsM: number | null;
  /** Ends of a known distance. */
  readonly span: readonly SheetPoint[];
  readonly drag: {
    readonly kind: 'move' | 'turn';
    readonly from: PlanePoint;
    readonly before: Affine;
    readonly turnDeg: number;
  } | null;
  readonly cursor: PlanePoint | null;
  readonly pointer: PlanePoint | null;
  readonly trouble: TroubleWords | null;
  /** Something worth knowing of the picture. */
  readonly note: string;
  /** Grows with every wish that the plate or the field have the focus. */
  readonly focus: { readonly on: 'plate' | 'length' | ''; readonly turn: number };
}

/** What the placing works on; asked for anew whenever something happens. */
export interface PlacingContext {
  readonly document: AtlasDocument;
  readonly units: UnitsPreference;
  readonly edit: (edit: Edit) => void;
  /** Middle of what is seen on the plate, and how broad that is. */
  readonly middle: () => PlanePoint;
  readonly widthM: () => number;
}

export const nothingPlaced: PlacingState = {
  subject: null,
  way: 'move',
  affine: sameAsSheet,
  start: sameAsSheet,
  outline: [],
  opacity: 1,
  pairs: [],
  keepShape: false,
  missesM: [],
  rmsM: null,
  span: [],
  drag: null,
  cursor: null,
  pointer: null,
  trouble: null,
  note: '',
  focus: { on: '', turn: 0 },
};
