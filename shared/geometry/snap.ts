import type { PlanePoint } from './points.ts';
import { distanceM, nearestOnLine } from './ring.ts';

export interface SnapLine {
  readonly points: readonly PlanePoint[];
  readonly closed: boolean;
}

export interface Snapped {
  readonly at: PlanePoint;
  readonly on: 'corner' | 'edge';
}

/** The corner within reach of a point, else the nearest place on an edge within reach, else null. Corners win. */
export function snapped(at: PlanePoint, lines: Iterable<SnapLine>, reachM: number): Snapped | null {
  let corner: PlanePoint | null = null;
  let cornerM = reachM;
  let edge: PlanePoint | null = null;
  let edgeM = reachM;
  for (const { points, closed } of lines) {
    for (const point of points) {
      // Most corners are far off: compared one way first.
      if (Math.abs(point.eastM - at.eastM) > reachM) continue;
      const distance = distanceM(point, at);
      if (distance <= cornerM) {
        corner = point;
        cornerM = distance;
      }
    }
    if (points.length === 0) continue;
    const nearest = nearestOnLine(at, points, closed);
    if (nearest.distanceM <= edgeM) {
      edge = nearest.at;
      edgeM = nearest.distanceM;
    }
  }
  if (corner !== null) return { at: corner, on: 'corner' };
  return edge === null ? null : { at: edge, on: 'edge' };
}
