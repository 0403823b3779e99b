import { HOLE_RADIUS_M } from '../ball/constants.ts';
import { captureReachM, centredLimitMps } from '../ball/capture.ts';
import type { Ground } from '../ball/ground.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { normalCdf, normalQuantile } from '../numeric/normal.ts';
import { PATH_SIZE, type PathSteps, stepPath } from './puttPath.ts';

/** A putt as meant, with standard deviations of pace (share) and line (radians). */
export interface MeantPutt {
  readonly from: PlanePoint;
  readonly speedMps: number;
  readonly bearing: number;
  readonly speedSd: number;
  readonly lineSd: number;
  /** Out where it is left out. */
  readonly flagstickIn?: boolean;
}

/** How closely the chance is worked out. */
export interface ChanceRules {
  /** Paces at which the putt is really rolled; `MOST_PACES` at most. */
  readonly paces: number;
  readonly steps: PathSteps;
}

const MOST_PACES = 5;
const FINE: ChanceRules = { paces: MOST_PACES, steps: { nearM: 0.03, farM: 0.12 } };
/** Slices of pace that are integrated between those rolled. */
const STRATA = 20;
/** This far from the hole a ball takes the near steps, metres. */
const NEAR_M = 0.5;
/** A ball that dies a little short of the middle drops too: mean depth of the hole along its path, in radii. */
const DEPTH = 0.8;
const path = new Float64Array(PATH_SIZE);
/** Offset from the hole, squared speed there, and squared speed lost per metre at the end of the last pass. */
const passing = new Float64Array(3);
const atHole = new Float64Array(4);
const knotOffset = new Float64Array(MOST_PACES);
const knotSpread = new Float64Array(MOST_PACES);

/**
 * Chance that a putt drops, without a random number. Putts of a few paces are rolled past the hole, on the line
 * and beside it, to learn how the miss to the side and the squared speed there answer to line and pace; the
 * normal errors are then integrated over the capture law: the hole is as wide as `captureReachM` makes it at
 * that speed, on the slope there.
 */
export function makeChance(
  ground: Ground,
  rollingMps2: Float64Array,
  hole: PlanePoint,
  putt: MeantPutt,
  { paces, steps } = FINE,
): number {
  const { from, speedMps, bearing, speedSd, lineSd, flagstickIn = false } = putt;
  pass(ground, rollingMps2, hole, from, speedMps, bearing, steps);
  const v2 = passing[1] ?? 0;
  const spare = DEPTH * HOLE_RADIUS_M * (passing[2] ?? 0);
  ground.sample(Float64Array.of(hole.eastM, hole.northM), atHole);
  const limit = centredLimitMps((atHole[1] ?? 0) * (path[2] ?? 0) + (atHole[2] ?? 0) * (path[3] ?? 0));
  pass(ground, rollingMps2, hole, from, speedMps * (1 + speedSd), bearing, steps);
  const gain = ((passing[1] ?? 0) - v2) / (2 * speedSd + speedSd * speedSd);
  if (!(gain > 0)) return 0;
  // Below this many deviations of pace the ball does not arrive; v^2 at the hole is linear in v^2 at the start.
  const least = 1 - (v2 + spare) / gain;
  const zLeast = least > 0 ? (Math.sqrt(least) - 1) / speedSd : -8;
  const short = normalCdf(zLeast);
  for (let k = 0; k < paces; k += 1) {
    const pace = speedMps * (1 + speedSd * paceAt(short, (k + 0.5) / paces));
    pass(ground, rollingMps2, hole, from, pace, bearing + 0.5 * lineSd, steps);
    const right = passing[0] ?? 0;
    pass(ground, rollingMps2, hole, from, pace, bearing - 0.5 * lineSd, steps);
    const left = passing[0] ?? 0;
    knotOffset[k] = (left + right) / 2;
    knotSpread[k] = Math.max(1e-6, Math.abs(right - left));
  }
  let sum = 0;
  for (let i = 0; i < STRATA; i += 1) {
    const share = (i + 0.5) / STRATA;
    const factor = 1 + speedSd * paceAt(short, share);
    const speed = Math.sqrt(Math.max(0, v2 + gain * (factor * factor - 1)));
    const half = captureReachM(speed, limit, flagstickIn);
    if (half === 0) continue;
    const middle = between(knotOffset, paces, share);
    const spread = between(knotSpread, paces, share);
    sum += normalCdf((half - middle) / spread) - normalCdf((-half - middle) / spread);
  }
  return ((1 - short) * sum) / STRATA;
}

/** Deviations of pace at a share of the putts that arrive, slowest first. */
const paceAt = (short: number, share: number): number => normalQuantile(short + (1 - short) * share);

/** Straight lines between the knots, drawn on at both ends. */
function between(values: Float64Array, knots: number, share: number): number {
  const at = share * knots - 0.5;
  const k = Math.min(knots - 2, Math.max(0, Math.floor(at)));
  return (values[k] ?? 0) + (at - k) * ((values[k + 1] ?? 0) - (values[k] ?? 0));
}

/**
 * Rolls to the nearest point to the hole: writes the offset there (positive right of it) and the squared speed
 * into `passing`, the latter negative by as much as was lacking where the ball stops short.
 */
function pass(
  ground: Ground,
  rollingMps2: Float64Array,
  hole: PlanePoint,
  from: PlanePoint,
  speedMps: number,
  bearing: number,
  steps: PathSteps,
): void {
  path[0] = from.eastM;
  path[1] = from.northM;
  path[2] = sin(bearing);
  path[3] = cos(bearing);
  path[4] = speedMps * speedMps;
  let lost = 1;
  for (let guard = 0; guard < 2000; guard += 1) {
    const de = hole.eastM - path[0];
    const dn = hole.northM - path[1];
    const ahead = de * path[2] + dn * path[3];
    const v2 = path[4];
    if (ahead <= 1e-6 || v2 <= 0.012) {
      passing[0] = dn * path[2] - de * path[3];
      passing[1] = ahead > 1e-6 ? v2 - lost * ahead : v2;
      passing[2] = lost;
      return;
    }
    const step = Math.min(ahead, ahead < NEAR_M ? steps.nearM : steps.farM);
    stepPath(ground, rollingMps2, path, step);
    lost = Math.max(0.05, (v2 - path[4]) / step);
  }
  passing[0] = 1e3;
  passing[1] = -1;
  passing[2] = lost;
}
