import { type PlanePoint, planePoint } from '../geometry/points.ts';
import type { FinishEllipse } from '../planner/plan.ts';

/** Points round an ellipse of finishes, in the plane. */
export function ellipsePoints(ellipse: FinishEllipse, count = 48): PlanePoint[] {
  const a = (ellipse.bearingDeg * Math.PI) / 180;
  const [along, across] = [Math.sin(a), Math.cos(a)];
  return Array.from({ length: count }, (_, i) => {
    const t = (2 * Math.PI * i) / count;
    const u = ellipse.semiMajorM * Math.cos(t);
    const v = ellipse.semiMinorM * Math.sin(t);
    return planePoint(
      ellipse.centre.eastM + u * along + v * across,
      ellipse.centre.northM + u * across - v * along,
    );
  });
}

/**
 * The ellipse of equal likelihood of flat [east, north] pairs taken as normal, `sigmas` standard deviations out: 1.18
 * holds half of them (sqrt(2 ln 2)). Null for fewer than 3 points.
 */
export function pointsEllipse(flatM: Float64Array, sigmas: number): FinishEllipse | null {
  const n = Math.floor(flatM.length / 2);
  if (n < 3) return null;
  let sumE = 0;
  let sumN = 0;
  for (let i = 0; i < n; i += 1) {
    sumE += flatM[2 * i] ?? 0;
    sumN += flatM[2 * i + 1] ?? 0;
  }
  const [meanE, meanN] = [sumE / n, sumN / n];
  let [ee, en, nn] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const de = (flatM[2 * i] ?? 0) - meanE;
    const dn = (flatM[2 * i + 1] ?? 0) - meanN;
    ee += de * de;
    en += de * dn;
    nn += dn * dn;
  }
  const [vee, ven, vnn] = [ee / n, en / n, nn / n];
  const middle = (vee + vnn) / 2;
  const spread = Math.sqrt(((vee - vnn) / 2) ** 2 + ven * ven);
  return {
    centre: planePoint(meanE, meanN),
    semiMajorM: sigmas * Math.sqrt(Math.max(middle + spread, 0)),
    semiMinorM: sigmas * Math.sqrt(Math.max(middle - spread, 0)),
    bearingDeg: 90 - ((Math.atan2(2 * ven, vee - vnn) / 2) * 180) / Math.PI,
  };
}
