import { HOLE_RADIUS_M } from '../ball/constants.ts';
import { CENTRED_CAPTURE_MPS } from '../ball/capture.ts';
import type { Ground } from '../ball/ground.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { normalCdf, normalQuantile } from '../numeric/normal.ts';
import { PATH_SIZE, stepPath } from './puttPath.ts';

/** A putt as meant, with standard deviations of pace (share) and line (radians). */
export interface MeantPutt {
  readonly from: PlanePoint;
  readonly speedMps: number;
  readonly bearing: number;
  readonly speedSd: number;
  readonly lineSd: number;
}

const STRATA = 24;
const path = new Float64Array(PATH_SIZE);
const passing = new Float64Array(2);

/**
 * Chance that a putt drops, without a random number. Three neighbouring putts are rolled past the hole to learn how the miss to
 * the side and the squared speed there answer to line and pace (both close to straight lines); the normal errors are then
 * integrated over the capture law: the hole is as wide as `captureLimitMps` makes it at that speed.
 */
export function makeChance(
  ground: Ground,
  rollingMps2: Float64Array,
  hole: PlanePoint,
  putt: MeantPutt,
): number {
  const { speedMps, bearing, speedSd, lineSd } = putt;
  pass(ground, rollingMps2, hole, putt.from, speedMps, bearing);
  const offset = passing[0] ?? 0;
  const v2 = passing[1] ?? 0;
  pass(ground, rollingMps2, hole, putt.from, speedMps, bearing + lineSd);
  const perLine = (passing[0] ?? 0) - offset;
  pass(ground, rollingMps2, hole, putt.from, speedMps * (1 + speedSd), bearing);
  const perPace = (passing[0] ?? 0) - offset;
  const gain = ((passing[1] ?? 0) - v2) / (2 * speedSd + speedSd * speedSd);
  if (!(gain > 0)) return 0;
  // Below this many deviations of pace the ball does not arrive.
  const least = 1 - v2 / gain;
  const zLeast = least > 0 ? (Math.sqrt(least) - 1) / speedSd : -8;
  const short = normalCdf(zLeast);
  const spread = Math.max(1e-6, Math.abs(perLine));
  let sum = 0;
  for (let i = 0; i < STRATA; i += 1) {
    const z = normalQuantile(short + ((1 - short) * (i + 0.5)) / STRATA);
    const factor = 1 + speedSd * z;
    const speed = Math.sqrt(Math.max(0, v2 + gain * (factor * factor - 1)));
    if (speed >= CENTRED_CAPTURE_MPS) continue;
    const half = HOLE_RADIUS_M * Math.sqrt(1 - speed / CENTRED_CAPTURE_MPS);
    const middle = offset + perPace * z;
    sum += normalCdf((half - middle) / spread) - normalCdf((-half - middle) / spread);
  }
  return ((1 - short) * sum) / STRATA;
}

/**
 * Rolls to the nearest point to the hole: writes the offset there (positive right of it) and the squared speed into
 * `passing`, the latter negative by as much as was lacking where the ball stops short.
 */
function pass(
  ground: Ground,
  rollingMps2: Float64Array,
  hole: PlanePoint,
  from: PlanePoint,
  speedMps: number,
  bearing: number,
): void {
  path[0] = from.eastM;
  path[1] = from.northM;
  path[2] = sin(bearing);
  path[3] = cos(bearing);
  path[4] = speedMps * speedMps;
  let lost = 1;
  for (let guard = 0; guard < 2000; guard += 1) {
    const de = hole.eastM - (path[0] ?? 0);
    const dn = hole.northM - (path[1] ?? 0);
    const ahead = de * (path[2] ?? 0) + dn * (path[3] ?? 0);
    const v2 = path[4] ?? 0;
    if (ahead <= 1e-6 || v2 <= 0.012) {
      passing[0] = dn * (path[2] ?? 0) - de * (path[3] ?? 0);
      passing[1] = ahead > 1e-6 ? v2 - lost * ahead : v2;
      return;
    }
    const step = Math.min(ahead, ahead < 0.5 ? 0.03 : 0.12);
    stepPath(ground, rollingMps2, path, step);
    lost = Math.max(0.05, (v2 - (path[4] ?? 0)) / step);
  }
  passing[0] = 1e3;
  passing[1] = -1;
}
