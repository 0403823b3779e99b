import { bearingDeg } from '../geometry/bearing.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { length2 } from '../numeric/elementary.ts';
import type { Scene } from './scene.ts';

/** A line along which the green is approached, and what is aimed at. */
export interface ApproachLine {
  /** True bearing, degrees. */
  readonly bearingDeg: number;
  readonly distanceM: number;
  readonly target: PlanePoint;
}

/** Where approach shots come from: some way out along a bearing (degrees), or a place. */
export type ApproachFrom =
  { readonly bearingDeg: number; readonly distanceM: number } | { readonly at: PlanePoint };

/** The line from there to a target. */
export function approachLine(from: ApproachFrom, target: PlanePoint): ApproachLine {
  if (!('at' in from)) return { ...from, target };
  const { at } = from;
  return {
    bearingDeg: bearingDeg(at, target),
    distanceM: length2(target.eastM - at.eastM, target.northM - at.northM),
    target,
  };
}

/** The middle of the corners of a green. */
export function greenMiddle({ green }: Pick<Scene, 'green'>): PlanePoint {
  const ring = green.polygon[0] ?? [];
  const count = Math.max(1, ring.length);
  return {
    eastM: ring.reduce((sum, p) => sum + p.eastM, 0) / count,
    northM: ring.reduce((sum, p) => sum + p.northM, 0) / count,
  };
}
