import { VX, VY, VZ, X, Y, Z } from './bounce.ts';
import type { Obstacle } from './ground.ts';
import { MARK_OBSTRUCTED, type ShotWork } from './shotWork.ts';

/** Share of its speed across the ground a ball keeps on meeting a crown, and off a wall. Assumed. */
const CROWN_KEEPS = 0.15;
const WALL_KEEPS = 0.35;

/** Whether a point lies inside a flat ring, by counting crossings. */
export function insideRing(ring: Float64Array, x: number, y: number): boolean {
  let inside = false;
  const size = ring.length;
  let ax = ring[size - 2] as number; // rings have at least three points
  let ay = ring[size - 1] as number;
  for (let i = 0; i < size; i += 2) {
    const bx = ring[i] as number;
    const by = ring[i + 1] as number;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside;
}

function within(o: Obstacle, x: number, y: number, z: number): boolean {
  return z >= o.bottomM && z <= o.topM && insideRing(o.ringM, x, y);
}

/**
 * If the flight step from `state` to `next` enters a crown or a wall, stops it there and changes the ball's velocity in
 * `state`: a crown takes most of the speed across the ground and lets the ball drop, a wall throws it back the way it
 * came. Both are crude stand-ins (assumed): what a branch does to a ball nobody can know. Returns whether it met one.
 */
export function meetObstacles(w: ShotWork): boolean {
  const s = w.state;
  const n = w.next;
  for (const o of w.obstacles) {
    if (within(o, n[X] as number, n[Y] as number, n[Z] as number)) {
      if (within(o, s[X] as number, s[Y] as number, s[Z] as number)) continue;
      w.marks[MARK_OBSTRUCTED] = 1;
      const keeps = o.kind === 'tree' ? CROWN_KEEPS : -WALL_KEEPS;
      if (o.kind === 'tree') {
        s[X] = n[X] as number;
        s[Y] = n[Y] as number;
        s[Z] = n[Z] as number;
      }
      s[VX] = keeps * (n[VX] as number);
      s[VY] = keeps * (n[VY] as number);
      s[VZ] = Math.min(0, o.kind === 'tree' ? CROWN_KEEPS * (n[VZ] as number) : (n[VZ] as number));
      if (w.record !== null) w.record.points.push(s[X] as number, s[Y] as number, s[Z] as number);
      return true;
    }
  }
  return false;
}
