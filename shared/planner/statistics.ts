import type { FinishEllipse } from './plan.ts';
import { atan2, length2, log } from '../numeric/elementary.ts';

/** Quantile of sorted values by linear interpolation (Hyndman & Fan's type 7). */
export function quantileOfSorted(sorted: Float64Array, q: number): number {
  const n = sorted.length;
  if (n === 0) return NaN;
  const at = Math.min(n - 1, Math.max(0, q * (n - 1)));
  const i = Math.floor(at);
  const low = sorted[i] ?? NaN;
  const high = sorted[Math.min(n - 1, i + 1)] ?? NaN;
  return low + (high - low) * (at - i);
}

/**
 * Ellipse expected to hold a share of a cloud of [east, north] pairs: from the covariance of the innermost 90 %
 * (by Mahalanobis distance about the mean), so that a few wild shots do not swell it, then scaled until it does
 * hold that share of the points.
 */
export function shareEllipses(pointsM: Float64Array, shares: readonly number[]): readonly FinishEllipse[] {
  const n = pointsM.length / 2;
  const weights = new Uint8Array(n).fill(1);
  const distance = new Float64Array(n);
  let east = 0;
  let north = 0;
  let ee = 0;
  let nn = 0;
  let en = 0;
  for (let pass = 0; pass < 3; pass += 1) {
    let count = 0;
    east = 0;
    north = 0;
    for (let i = 0; i < n; i += 1) {
      if (weights[i] === 0) continue;
      count += 1;
      east += pointsM[2 * i] ?? 0;
      north += pointsM[2 * i + 1] ?? 0;
    }
    east /= count;
    north /= count;
    ee = 1e-6;
    nn = 1e-6;
    en = 0;
    for (let i = 0; i < n; i += 1) {
      if (weights[i] === 0) continue;
      const de = (pointsM[2 * i] ?? 0) - east;
      const dn = (pointsM[2 * i + 1] ?? 0) - north;
      ee += (de * de) / count;
      nn += (dn * dn) / count;
      en += (de * dn) / count;
    }
    const det = Math.max(1e-12, ee * nn - en * en);
    for (let i = 0; i < n; i += 1) {
      const de = (pointsM[2 * i] ?? 0) - east;
      const dn = (pointsM[2 * i + 1] ?? 0) - north;
      distance[i] = (nn * de * de - 2 * en * de * dn + ee * dn * dn) / det;
    }
    const limit = quantileOfSorted(Float64Array.from(distance).sort(), 0.9);
    for (let i = 0; i < n; i += 1) weights[i] = (distance[i] ?? 0) <= limit ? 1 : 0;
  }
  const sorted = distance.sort();
  const mean = (ee + nn) / 2;
  const spread = length2((ee - nn) / 2, en);
  const major = Math.sqrt(Math.max(0, mean + spread));
  const minor = Math.sqrt(Math.max(0, mean - spread));
  // Angle of the major axis from east, counter-clockwise; a bearing runs clockwise from north.
  const bearingDeg = 90 - (0.5 * atan2(2 * en, ee - nn) * 180) / Math.PI;
  return shares.map((share) => {
    const scale = n > 3 ? Math.sqrt(quantileOfSorted(sorted, share)) : Math.sqrt(-2 * log(1 - share));
    return {
      centre: { eastM: east, northM: north },
      semiMajorM: major * scale,
      semiMinorM: minor * scale,
      bearingDeg: ((bearingDeg % 180) + 180) % 180,
    };
  });
}
