import type { PlanePoint } from '../geometry/points.ts';
import type { Surface } from './surface.ts';
import type { SurveyedGround } from './surveyedGround.ts';

/** Four paces of 3 ft: the least a hole should be from the edge of the green (USGA booklet, as quoted by a greens crew). */
export const LEAST_FROM_EDGE_M = 4 * 0.9144;
/** Ground about the hole that should be nearly even: 3 ft, the larger of the published 2 to 3 ft. */
export const EVEN_RADIUS_M = 0.9144;
/** How much the slope may change within that ground, percent, and depart from a plane, metres, and still be nearly even. */
const EVEN_SLOPE_SPREAD_PCT = 1.2;
const EVEN_DEPARTURE_M = 0.012;

/**
 * The steepest slope for a hole by green speed: Lemons 2008, Green Section Record, chart A: its limit between recommended
 * and marginal for 10 to 14 ft; for 8 and 9 ft, where only its maximum was seen, 0.72 of that, the ratio at 10 ft.
 */
const SLOPE_LIMITS: readonly (readonly [stimpFt: number, slopePct: number])[] = [
  [8, 0.72 * 6.65],
  [9, 0.72 * 5.95],
  [10, 3.9],
  [11, 3.58],
  [12, 3.24],
  [13, 2.99],
  [14, 2.9],
];

/** Steepest fair slope at a hole, percent, for a green speed; the ends of the table hold beyond it. */
export function fairSlopeLimitPct(stimpFt: number): number {
  let before = SLOPE_LIMITS[0] as readonly [number, number];
  if (stimpFt <= before[0]) return before[1];
  for (const row of SLOPE_LIMITS) {
    if (stimpFt <= row[0]) {
      const t = row[0] > before[0] ? (stimpFt - before[0]) / (row[0] - before[0]) : 1;
      return before[1] + t * (row[1] - before[1]);
    }
    before = row;
  }
  return before[1];
}

/** Why a hole would not be fair in a place. */
export type FlagFault = 'offGreen' | 'nearEdge' | 'tooSteep' | 'uneven';

export interface FlagGround {
  readonly faults: readonly FlagFault[];
  /** From the nearest edge of the green, positive on it. */
  readonly fromEdgeM: number;
  /** Steepest slope within the even radius, and the limit for the day's green speed. */
  readonly steepestPct: number;
  readonly limitPct: number;
  /** Difference between steepest and gentlest there, and the greatest departure from a plane. */
  readonly slopeSpreadPct: number;
  readonly departureM: number;
}

const RAYS = 12;
/** Directions about a point by exact halving of angles, so that they are the same on every machine. */
const HALF_ROOT_3 = Math.sqrt(3) / 2;
const directions: readonly (readonly [number, number])[] = [
  [1, 0],
  [HALF_ROOT_3, 0.5],
  [0.5, HALF_ROOT_3],
  [0, 1],
  [-0.5, HALF_ROOT_3],
  [-HALF_ROOT_3, 0.5],
  [-1, 0],
  [-HALF_ROOT_3, -0.5],
  [-0.5, -HALF_ROOT_3],
  [0, -1],
  [0.5, -HALF_ROOT_3],
  [HALF_ROOT_3, -0.5],
];

/**
 * Whether a hole could fairly be cut at a point: on the green, four paces from its edge, and on ground within 3 ft that is
 * nearly even and no steeper than the limit for the green speed. The Committee has the last word.
 */
export function flagGround(ground: SurveyedGround<Surface>, at: PlanePoint, stimpFt: number): FlagGround {
  const out = new Float64Array(4);
  const { surface } = ground;
  surface.sampleHeight(at.eastM, at.northM, out);
  const middle = out[0] as number;
  const first = Math.sqrt((out[1] as number) * (out[1] as number) + (out[2] as number) * (out[2] as number));
  let steepest = first;
  let gentlest = first;
  const rises: number[] = [];
  for (const radius of [EVEN_RADIUS_M / 2, EVEN_RADIUS_M]) {
    for (const [x, y] of directions) {
      surface.sampleHeight(at.eastM + radius * x, at.northM + radius * y, out);
      const gx = out[1] as number;
      const gy = out[2] as number;
      const steepness = Math.sqrt(gx * gx + gy * gy);
      steepest = Math.max(steepest, steepness);
      gentlest = Math.min(gentlest, steepness);
      rises.push((out[0] as number) - middle);
    }
  }
  // The best plane through symmetric samples: its slopes are plain moments.
  let planeEast = 0;
  let planeNorth = 0;
  let lift = 0;
  let weight = 0;
  const place = (i: number): readonly [number, number] => {
    const radius = i < RAYS ? EVEN_RADIUS_M / 2 : EVEN_RADIUS_M;
    const [x, y] = directions[i % RAYS] as readonly [number, number];
    return [radius * x, radius * y];
  };
  rises.forEach((rise, i) => {
    const [x, y] = place(i);
    planeEast += x * rise;
    planeNorth += y * rise;
    lift += rise / (rises.length + 1);
    weight += x * x;
  });
  planeEast /= weight;
  planeNorth /= weight;
  let departureM = Math.abs(lift);
  rises.forEach((rise, i) => {
    const [x, y] = place(i);
    departureM = Math.max(departureM, Math.abs(rise - lift - planeEast * x - planeNorth * y));
  });

  const fromEdgeM = ground.greenEdgeDistance(at);
  const limitPct = fairSlopeLimitPct(stimpFt);
  const slopeSpreadPct = 100 * (steepest - gentlest);
  const steepestPct = 100 * steepest;
  const faults: FlagFault[] = [];
  if (!ground.isOnGreen(at)) faults.push('offGreen');
  else if (fromEdgeM < LEAST_FROM_EDGE_M) faults.push('nearEdge');
  if (steepestPct > limitPct) faults.push('tooSteep');
  if (slopeSpreadPct > EVEN_SLOPE_SPREAD_PCT || departureM > EVEN_DEPARTURE_M) faults.push('uneven');
  return { faults, fromEdgeM, steepestPct, limitPct, slopeSpreadPct, departureM };
}
