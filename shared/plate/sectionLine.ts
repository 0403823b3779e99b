import type { PlanePoint } from '../geometry/points.ts';
import { planePoint } from '../geometry/points.ts';
import type { PlanOption } from '../planner/plan.ts';
import { holedCode, isTroubleFinish } from './finishCodes.ts';
import { drawnFinishes } from './shotMark.ts';

/** The straight line from ball to flag: places on it by distance, and how far along it any point lies. */
export interface LineAxis {
  readonly lengthM: number;
  readonly at: (alongM: number) => PlanePoint;
  readonly along: (point: PlanePoint) => number;
}

export function lineAxis(ball: PlanePoint, flag: PlanePoint): LineAxis {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const lengthM = Math.max(Math.hypot(east, north), 0.5);
  const [ue, un] = [east / lengthM, north / lengthM];
  return {
    lengthM,
    at: (d) => planePoint(ball.eastM + ue * d, ball.northM + un * d),
    along: (p) => (p.eastM - ball.eastM) * ue + (p.northM - ball.northM) * un,
  };
}

/** Height of a sampled section at any distance along it. */
export function heightLookup(
  distancesM: Float64Array,
  heightsM: Float64Array,
  fromM: number,
): (alongM: number) => number {
  const last = distancesM.length - 1;
  const step = last > 0 ? (distancesM[last] ?? 1) / last : 1;
  return (alongM) => {
    const place = Math.min(Math.max((alongM - fromM) / step, 0), last);
    const i = Math.min(Math.floor(place), Math.max(last - 1, 0));
    const a = heightsM[i] ?? 0;
    const b = heightsM[Math.min(i + 1, last)] ?? a;
    return a + (b - a) * (place - i);
  };
}

/** The highest point of a path above datum. */
export function pathTop(option: PlanOption): number {
  let top = -Infinity;
  for (let i = 2; i < option.path.pointsM.length; i += 3) top = Math.max(top, option.path.pointsM[i] ?? 0);
  return top;
}

/** Where one ball stops along the line. */
export interface Stop {
  readonly alongM: number;
  readonly trouble: boolean;
}

/** The drawn finishes along the line; what is holed stops at the flag. */
export function finishDistances(option: PlanOption, axis: LineAxis): Stop[] {
  const count = Math.min(drawnFinishes, option.finishCodes.length);
  return Array.from({ length: count }, (_, i) => {
    const code = option.finishCodes[i] ?? 0;
    const at = planePoint(option.finishesM[2 * i] ?? 0, option.finishesM[2 * i + 1] ?? 0);
    return { alongM: code === holedCode ? axis.lengthM : axis.along(at), trouble: isTroubleFinish(code) };
  });
}
