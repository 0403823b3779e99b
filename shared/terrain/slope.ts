import { bearingDeg } from '../geometry/bearing.ts';
import type { PlanePoint } from '../geometry/points.ts';
import type { Surface } from './surface.ts';

/** Slope of the ground at a point. */
export interface GroundSlope {
  readonly slopePct: number;
  /** True bearing in which the ground falls, degrees; 0 on level ground. */
  readonly downhillBearingDeg: number;
}

const ORIGIN: PlanePoint = { eastM: 0, northM: 0 };

export function slopeAt(surface: Surface, at: PlanePoint): GroundSlope {
  const out = new Float64Array(3);
  surface.sampleHeight(at.eastM, at.northM, out);
  return slopeOfGradient(out[1] as number, out[2] as number);
}

/** Slope from the rise per metre to the east and to the north. */
export function slopeOfGradient(riseEast: number, riseNorth: number): GroundSlope {
  const steepness = Math.sqrt(riseEast * riseEast + riseNorth * riseNorth);
  return {
    slopePct: 100 * steepness,
    downhillBearingDeg: steepness > 0 ? bearingDeg(ORIGIN, { eastM: -riseEast, northM: -riseNorth }) : 0,
  };
}

/** Heights around and at a grid cell, row by row from the north-west. */
export type Window3x3 = readonly [
  ...[northWest: number, north: number, northEast: number],
  ...[west: number, middle: number, east: number],
  ...[southWest: number, south: number, southEast: number],
];

/**
 * Gradient at the middle of an imported grid by Horn's weights 1-2-1 (Horn 1981, Proc. IEEE 69:14-47; from memory): steady
 * on grids with noise in them. Returns [rise per metre east, rise per metre north].
 */
export function hornGradient(z: Window3x3, cellM: number): [riseEast: number, riseNorth: number] {
  const [nw, n, ne, w, , e, sw, s, se] = z;
  return [
    (ne + 2 * e + se - (nw + 2 * w + sw)) / (8 * cellM),
    (nw + 2 * n + ne - (sw + 2 * s + se)) / (8 * cellM),
  ];
}

/**
 * The same by central differences (Zevenbergen & Thorne 1987, Earth Surf. Process. Landf. 12:47-56; from memory): true to a
 * quadric, so for grids that are smooth already.
 */
export function centralGradient(z: Window3x3, cellM: number): [riseEast: number, riseNorth: number] {
  const [, n, , w, , e, , s] = z;
  return [(e - w) / (2 * cellM), (n - s) / (2 * cellM)];
}
