import type { PlanePoint } from '../geometry/points.ts';
import { heightTarget, slopeTarget, variance } from './confidence.ts';
import type { FittedSurface } from './fitSurface.ts';

/** A putt feels the slope over some paces, not over the length of a level: metres. */
const FELT_OVER_M = 3;

/** A spot worth measuring. */
export interface MeasureHere {
  readonly at: PlanePoint;
  /** Share of the doubt that was left which a height reading here takes away, 0 to 1. */
  readonly reduction: number;
}

export interface MeasureOptions {
  /** How many spots; each is chosen as if those before it had been measured. */
  readonly count?: number;
  /** One standard deviation of the reading to be taken, metres. */
  readonly accuracyM?: number;
  /** How much the doubt at a place matters (0 or more). Default: the same everywhere. */
  readonly weight?: (at: PlanePoint) => number;
  /** What the doubt is about: slopes turn putts, heights move landings. */
  readonly doubtIn?: 'slope' | 'height';
}

/**
 * The spots where one more height reading would most reduce the doubt over `places` (weighted mean variance of slope or
 * height there). Greedy: exact for the first spot and near the best for the rest. The candidates are the places too.
 *
 * @param places where the ground matters, such as a lattice over the green of 1 to 1.5 m; at most some hundreds
 */
export function measureNext(
  surface: FittedSurface,
  places: readonly PlanePoint[],
  options: MeasureOptions = {},
): MeasureHere[] {
  const { plate } = surface;
  const { count = 3, accuracyM = 0.005, weight = () => 1, doubtIn = 'slope' } = options;
  if (plate === null || places.length === 0) return [];
  const n = places.length;
  const candidates = places.map((at) => heightTarget(plate, at));
  const wanted =
    doubtIn === 'height'
      ? candidates
      : places.flatMap((at) => [
          slopeTarget(plate, at, 'east', FELT_OVER_M),
          slopeTarget(plate, at, 'north', FELT_OVER_M),
        ]);
  const perPlace = wanted.length / n;
  const weights = Float64Array.from(wanted, (_, k) => {
    const at = places[Math.floor(k / perPlace)];
    if (at === undefined) return 0;
    const scale = surface.doubtScale(at.eastM, at.northM);
    return scale * scale * Math.max(0, weight(at));
  });
  const rows = wanted.length;
  // Covariance of what is wanted, and of the candidates themselves, with every candidate.
  const toWanted = new Float64Array(rows * n);
  wanted.forEach((target, k) => {
    candidates.forEach((candidate, j) => {
      toWanted[k * n + j] = plate.covariance(target, candidate);
    });
  });
  const among = new Float64Array(n * n);
  candidates.forEach((a, i) => {
    for (let j = 0; j <= i; j += 1) {
      const value = plate.covariance(a, candidates[j] as (typeof candidates)[number]);
      among[i * n + j] = value;
      among[j * n + i] = value;
    }
  });
  let doubt = 0;
  wanted.forEach((target, k) => {
    doubt += (weights[k] as number) * variance(plate, target);
  });

  const spots: MeasureHere[] = [];
  for (let pick = 0; pick < count && doubt > 0; pick += 1) {
    let best = -1;
    let most = 0;
    for (let j = 0; j < n; j += 1) {
      let gain = 0;
      for (let k = 0; k < rows; k += 1) {
        const c = toWanted[k * n + j] as number;
        gain += (weights[k] as number) * c * c;
      }
      gain /= Math.max(0, among[j * n + j] as number) + accuracyM * accuracyM;
      if (gain > most) {
        most = gain;
        best = j;
      }
    }
    const at = places[best];
    if (at === undefined) break;
    spots.push({ at, reduction: Math.min(1, most / doubt) });
    doubt -= most;
    condition(toWanted, rows, among, n, best, accuracyM * accuracyM);
  }
  return spots;
}

/** Brings all covariances to what they are once candidate `j` has been read. */
function condition(
  toWanted: Float64Array,
  rows: number,
  among: Float64Array,
  n: number,
  j: number,
  noise: number,
): void {
  const row = among.slice(j * n, (j + 1) * n);
  const per = 1 / ((row[j] as number) + noise);
  for (let k = 0; k < rows; k += 1) {
    const factor = (toWanted[k * n + j] as number) * per;
    for (let i = 0; i < n; i += 1) {
      toWanted[k * n + i] = (toWanted[k * n + i] as number) - factor * (row[i] as number);
    }
  }
  for (let k = 0; k < n; k += 1) {
    const factor = (row[k] as number) * per;
    for (let i = 0; i < n; i += 1) {
      among[k * n + i] = (among[k * n + i] as number) - factor * (row[i] as number);
    }
  }
}
