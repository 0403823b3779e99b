import type { PlanePoint } from '../geometry/points.ts';
import { distanceM } from '../geometry/ring.ts';
import { doubtScaleAt, heightTarget, variance } from './confidence.ts';
import type { FittedSurface } from './fitSurface.ts';
import type { Target } from './plateDoubt.ts';

/** A putt feels the slope over some paces, not over the length of a level: metres. */
const FELT_OVER_M = 3;
/** Nobody is sent twice to one spot, metres. */
const APART_M = 1;

/** A spot worth measuring. */
export interface MeasureHere {
  readonly at: PlanePoint;
  /** Share of the whole doubt that a height reading here takes away, 0 to 1; the spots before it are read by then. */
  readonly reduction: number;
}

/** Something that hangs on heights, and how much its doubt matters. */
export interface AtStake {
  /** Flat [east, north, weight] triples: a weighted sum of heights, such as a slope or what a putt breaks. */
  readonly terms: readonly number[];
  /** Where it lies, for how rough the ground is there. */
  readonly at: PlanePoint;
  /** What a unit of its variance costs (0 or more). */
  readonly weight: number;
}

export interface MeasureOptions {
  /** How many spots; each is chosen as if those before it had been measured. */
  readonly count?: number;
  /** One standard deviation of the reading to be taken, metres. */
  readonly accuracyM?: number;
}

/**
 * The spots where one more height reading would most reduce the weighted doubt of what is at stake. Greedy: exact for the
 * first spot and near the best for the rest. None where the ground was only assumed.
 *
 * @param spots where a reading could be taken, some hundreds at most
 */
export function measureNext(
  surface: FittedSurface,
  atStake: readonly AtStake[],
  spots: readonly PlanePoint[],
  { count = 3, accuracyM = 0.005 }: MeasureOptions = {},
): MeasureHere[] {
  const { plate } = surface;
  if (plate === null || spots.length === 0) return [];
  const n = spots.length;
  const candidates = spots.map((at) => heightTarget(plate, at));
  // What the ground does there is less than the plate has it by this factor, and so readings count for less against it.
  const noise = Float64Array.from(spots, (at) => {
    const scale = doubtScaleAt(surface, plate, at);
    return (accuracyM * accuracyM) / Math.max(scale * scale, 1e-6);
  });
  const rows = atStake.length;
  const weights = new Float64Array(rows);
  // Covariance of what is at stake, and of the candidates themselves, with every candidate.
  const toStake = new Float64Array(rows * n);
  let whole = 0;
  atStake.forEach(({ terms, at, weight }, k) => {
    const scale = doubtScaleAt(surface, plate, at);
    weights[k] = scale * scale * Math.max(0, weight);
    const target = plate.target(terms);
    candidates.forEach((candidate, j) => {
      toStake[k * n + j] = plate.covariance(target, candidate);
    });
    whole += weights[k] * variance(plate, target);
  });
  const among = new Float64Array(n * n);
  candidates.forEach((a, i) => {
    for (let j = 0; j <= i; j += 1) {
      const value = plate.covariance(a, candidates[j] as Target);
      among[i * n + j] = value;
      among[j * n + i] = value;
    }
  });

  const chosen: MeasureHere[] = [];
  for (let pick = 0; pick < count && whole > 0; pick += 1) {
    let best = -1;
    let most = 0;
    for (let j = 0; j < n; j += 1) {
      if (chosen.some(({ at }) => distanceM(at, spots[j] as PlanePoint) < APART_M)) continue;
      let gain = 0;
      for (let k = 0; k < rows; k += 1) {
        const c = toStake[k * n + j] as number;
        gain += (weights[k] as number) * c * c;
      }
      gain /= Math.max(0, among[j * n + j] as number) + (noise[j] as number);
      if (gain > most) {
        most = gain;
        best = j;
      }
    }
    const at = spots[best];
    if (at === undefined) break;
    chosen.push({ at, reduction: Math.min(1, most / whole) });
    condition(toStake, rows, among, n, best, noise[best] as number);
  }
  return chosen;
}

/** The slopes at places, eastwards and northwards over some paces, each place as important as any other. */
export const slopesAt = (places: readonly PlanePoint[]): AtStake[] =>
  places.flatMap((at) => {
    const { eastM: x, northM: y } = at;
    const half = FELT_OVER_M / 2;
    const per = 1 / FELT_OVER_M;
    return [
      { at, weight: 1, terms: [x + half, y, per, x - half, y, -per] },
      { at, weight: 1, terms: [x, y + half, per, x, y - half, -per] },
    ];
  });

/** Brings all covariances to what they are once candidate `j` has been read. */
function condition(
  toStake: Float64Array,
  rows: number,
  among: Float64Array,
  n: number,
  j: number,
  noise: number,
): void {
  const row = among.slice(j * n, (j + 1) * n);
  const per = 1 / ((row[j] as number) + noise);
  for (let k = 0; k < rows; k += 1) {
    const factor = (toStake[k * n + j] as number) * per;
    for (let i = 0; i < n; i += 1) {
      toStake[k * n + i] = (toStake[k * n + i] as number) - factor * (row[i] as number);
    }
  }
  for (let k = 0; k < n; k += 1) {
    const factor = (row[k] as number) * per;
    for (let i = 0; i < n; i += 1) {
      among[k * n + i] = (among[k * n + i] as number) - factor * (row[i] as number);
    }
  }
}
