import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import type { AreaKind, GrainStrength } from '../words/vocabulary.ts';

/** Everything the ground of one complex is made from, in the plane. */
export interface TerrainInput {
  readonly areas: readonly TerrainArea[];
  readonly heights: readonly {
    readonly id: string;
    readonly at: PlanePoint;
    readonly heightM: number;
    readonly accuracyM: number;
  }[];
  readonly slopes: readonly {
    readonly id: string;
    readonly at: PlanePoint;
    readonly slopePct: number;
    readonly downhillBearingDeg: number;
    readonly accuracyPct: number;
  }[];
  /** Heights of elevation models, thinned as the fit needs. */
  readonly grids?: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly at: PlanePoint; readonly heightM: number }[];
    readonly accuracyM: number;
  }[];
  /** How the ground lies as a whole by eye: its mean slope over `reachM` to either side of a place. */
  readonly planes?: readonly {
    readonly id: string;
    readonly at: PlanePoint;
    readonly reachM: number;
    readonly slopePct: number;
    readonly downhillBearingDeg: number;
    readonly accuracyPct: number;
  }[];
  /** Lines along which the surface may bend sharply. */
  readonly breaklines: readonly { readonly id: string; readonly points: readonly PlanePoint[] }[];
  /** Lines of one known height. */
  readonly contours: readonly {
    readonly id: string;
    readonly points: readonly PlanePoint[];
    readonly heightM: number;
  }[];
  readonly walls: readonly {
    readonly id: string;
    readonly name: string;
    readonly points: readonly PlanePoint[];
    readonly heightM: number;
  }[];
  /** Box to fit and draw, metres. */
  readonly extent: {
    readonly westM: number;
    readonly southM: number;
    readonly eastM: number;
    readonly northM: number;
  };
}

export interface TerrainArea {
  readonly id: string;
  readonly kind: AreaKind;
  readonly name: string;
  readonly polygon: PlanePolygon;
  readonly lipHeightM: number | null;
  readonly treeHeightM: number | null;
  readonly canopyBaseM: number | null;
  /** Of the green that is played to. */
  readonly grain?: { readonly towardsDeg: number; readonly strength: GrainStrength };
}
