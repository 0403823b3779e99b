import { VX, VY, VZ, X, Y, Z } from './bounce.ts';
import { BALL_RADIUS_M } from './constants.ts';
import type { Obstacle } from './ground.ts';
import { MARK_OBSTRUCTED, type ShotWork } from './shotWork.ts';

/** Share of its speed across the ground a ball keeps on meeting a crown, and across and along a wall. Assumed. */
const CROWN_KEEPS = 0.15;
const WALL_KEEPS = 0.35;
const ALONG_WALL_KEEPS = 0.8;

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

/** Whether the box of a straight way, widened by a margin, meets the box of obstacle `k`: most ways end here. */
function boxesMeet(
  w: ShotWork,
  k: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  marginM: number,
): boolean {
  const boxes = w.obstacleBoxes;
  return (
    Math.max(x0, x1) + marginM >= (boxes[4 * k] as number) &&
    Math.max(y0, y1) + marginM >= (boxes[4 * k + 1] as number) &&
    Math.min(x0, x1) - marginM <= (boxes[4 * k + 2] as number) &&
    Math.min(y0, y1) - marginM <= (boxes[4 * k + 3] as number)
  );
}

/** Whether any obstacle stands within a margin of the way, seen from above: only then need a flight go by short steps. */
export function anyNear(
  w: ShotWork,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  marginM: number,
): boolean {
  for (let k = 0; k < w.obstacles.length; k += 1) if (boxesMeet(w, k, x0, y0, x1, y1, marginM)) return true;
  return false;
}

function within(o: Obstacle, x: number, y: number, z: number): boolean {
  return z >= o.bottomM && z <= o.topM && insideRing(o.ringM, x, y);
}

/** Unit normal of the side of the ring last met by `sideShare`. */
const side = new Float64Array(2);

/** Share of the way from (x0, y0) to (x1, y1) at which it first meets a side of the ring; 2 if it meets none. */
function sideShare(ring: Float64Array, x0: number, y0: number, x1: number, y1: number): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const size = ring.length;
  let least = 2;
  let ax = ring[size - 2] as number;
  let ay = ring[size - 1] as number;
  for (let i = 0; i < size; i += 2) {
    const bx = ring[i] as number;
    const by = ring[i + 1] as number;
    const ex = bx - ax;
    const ey = by - ay;
    const det = dx * ey - dy * ex;
    if (det !== 0) {
      const u = ((ax - x0) * ey - (ay - y0) * ex) / det;
      const v = ((ax - x0) * dy - (ay - y0) * dx) / det;
      if (u >= 0 && u < least && u <= 1 && v >= 0 && v <= 1) {
        least = u;
        const length = Math.sqrt(ex * ex + ey * ey);
        side[0] = -ey / length;
        side[1] = ex / length;
      }
    }
    ax = bx;
    ay = by;
  }
  return least;
}

/** Turns the velocity across the ground off the side last met: a wall keeps more along it than across. */
function offWall(s: Float64Array, vx: number, vy: number): void {
  const nx = side[0] as number;
  const ny = side[1] as number;
  const into = vx * nx + vy * ny;
  s[VX] = ALONG_WALL_KEEPS * (vx - into * nx) - WALL_KEEPS * into * nx;
  s[VY] = ALONG_WALL_KEEPS * (vy - into * ny) - WALL_KEEPS * into * ny;
}

/** A hair, metres: a ball is set down this far before a wall, or within a crown. */
const HAIR_M = 1e-3;

/**
 * If the flight step from `state` to `next` enters a crown or a wall, stops it there and changes the ball's velocity in
 * `state`: a crown takes most of the speed across the ground and lets the ball drop, a wall throws it off the side that
 * it meets. Both are crude stand-ins (assumed): what a branch does to a ball nobody can know; trunks are not in the
 * survey. Returns whether it met one.
 */
export function meetObstacles(w: ShotWork): boolean {
  const s = w.state;
  const n = w.next;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const z0 = s[Z] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const z1 = n[Z] as number;
  for (let k = 0; k < w.obstacles.length; k += 1) {
    const o = w.obstacles[k] as Obstacle; // k stays within
    if (!boxesMeet(w, k, x0, y0, x1, y1, 0)) continue;
    if ((z0 < o.bottomM && z1 < o.bottomM) || (z0 > o.topM && z1 > o.topM)) continue;
    if (within(o, x0, y0, z0)) continue;
    const share = sideShare(o.ringM, x0, y0, x1, y1);
    const atSide = z0 + share * (z1 - z0);
    const fromSide = share <= 1 && atSide >= o.bottomM && atSide <= o.topM;
    // From above or below, when it is within by the end of the step.
    if (!fromSide && !within(o, x1, y1, z1)) continue;
    w.marks[MARK_OBSTRUCTED] = 1;
    const length = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    const hair = length > 0 ? HAIR_M / length : 0;
    const tree = o.kind === 'tree';
    const u = fromSide ? Math.min(1, Math.max(0, share + (tree ? hair : -hair))) : 1;
    s[X] = x0 + u * (x1 - x0);
    s[Y] = y0 + u * (y1 - y0);
    s[Z] = z0 + u * (z1 - z0);
    const vx = n[VX] as number;
    const vy = n[VY] as number;
    if (tree) {
      s[VX] = CROWN_KEEPS * vx;
      s[VY] = CROWN_KEEPS * vy;
      s[VZ] = Math.min(0, CROWN_KEEPS * (n[VZ] as number));
    } else if (fromSide) {
      offWall(s, vx, vy);
      s[VZ] = Math.min(0, n[VZ] as number);
    } else {
      s[VX] = -WALL_KEEPS * vx;
      s[VY] = -WALL_KEEPS * vy;
      s[VZ] = Math.min(0, n[VZ] as number);
    }
    if (w.record !== null) w.record.points.push(s[X], s[Y], s[Z]);
    return true;
  }
  return false;
}

/**
 * The same for a ball on the ground: a wall, or a crown that comes down to it. Leaves the ball at the side with what
 * speed it has left; `here` is not looked at again.
 */
export function meetOnGround(w: ShotWork): boolean {
  const s = w.state;
  const n = w.next;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const z = w.here[0] as number;
  for (let k = 0; k < w.obstacles.length; k += 1) {
    const o = w.obstacles[k] as Obstacle; // k stays within
    if (!boxesMeet(w, k, x0, y0, x1, y1, 0)) continue;
    if (o.bottomM > z + 2 * BALL_RADIUS_M || o.topM < z || insideRing(o.ringM, x0, y0)) continue;
    const share = sideShare(o.ringM, x0, y0, x1, y1);
    if (share > 1) continue;
    w.marks[MARK_OBSTRUCTED] = 1;
    const length = Math.max(HAIR_M, Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0)));
    const tree = o.kind === 'tree';
    const u = Math.max(0, share + (tree ? HAIR_M : -HAIR_M) / length);
    s[X] = x0 + u * (x1 - x0);
    s[Y] = y0 + u * (y1 - y0);
    // Speed at the side: between the two ends of the step.
    const vx = (s[VX] as number) + share * ((n[VX] as number) - (s[VX] as number));
    const vy = (s[VY] as number) + share * ((n[VY] as number) - (s[VY] as number));
    if (tree) {
      s[VX] = CROWN_KEEPS * vx;
      s[VY] = CROWN_KEEPS * vy;
    } else offWall(s, vx, vy);
    return true;
  }
  return false;
}
