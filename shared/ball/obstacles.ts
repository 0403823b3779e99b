import { VX, VY, VZ, WX, WZ, X, Y, Z } from './bounce.ts';
import { exp } from '../numeric/elementary.ts';
import { BALL_RADIUS_M } from './constants.ts';
import type { Obstacle } from './ground.ts';
import { insideRing, side, sideShare, wayInside } from './obstacleRing.ts';
import { MARK_OBSTRUCTED, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';
import { MET_OBSTACLE } from './slots.ts';

const { state: s, next: n, here, probe, marks } = shotMemory;

/**
 * Way through a crown on which a ball loses all but a third (1/e) of its speed, metres: airy where the crown is clear of
 * the ground, dense in a bush or a hedge, whose crown comes down to it. Assumed.
 */
const AIRY_M = 1.5;
const DENSE_M = 0.15;
/** A crown this near to the ground, metres, is a bush. */
const BUSH_BELOW_M = 0.4;
/** Share of its speed a ball keeps across and along a wall. Assumed. */
const WALL_KEEPS = 0.35;
const ALONG_WALL_KEEPS = 0.8;

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

/** Share of its speed a ball keeps in the crown that it enters, on the straight way to where it would come out. */
function crownKeeps(w: ShotWork, o: Obstacle, vx: number, vy: number, vz: number): number {
  const x = s[X] as number;
  const y = s[Y] as number;
  w.ground.sample(s, probe);
  const bush = o.bottomM < (probe[0] as number) + BUSH_BELOW_M;
  return exp(-wayInside(o, x, y, s[Z] as number, vx, vy, vz) / (bush ? DENSE_M : AIRY_M));
}

/**
 * If the flight step from `state` to `next` enters a crown or a wall, stops it there and changes the ball's velocity in
 * `state`: a crown takes speed and spin by the way the ball has before it in there, so that a clipped edge costs little and the
 * middle drops it; a wall throws it off the side that it meets. Both are crude stand-ins (assumed): common practice only
 * says that a tree is mostly air and not to count on it; what one branch does to a ball nobody can know, trunks are
 * not in the survey, and no chance is drawn here: how often a shot gets by comes from the player's own spread. Returns
 * whether it met one.
 */
export function meetObstacles(w: ShotWork): boolean {
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
    marks[MARK_OBSTRUCTED] = MET_OBSTACLE;
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
      const keeps = crownKeeps(w, o, vx, vy, n[VZ] as number);
      s[VX] = keeps * vx;
      s[VY] = keeps * vy;
      s[VZ] = keeps * (n[VZ] as number);
      for (let i = WX; i <= WZ; i += 1) s[i] = keeps * (n[i] as number);
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
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const z = here[0] as number;
  for (let k = 0; k < w.obstacles.length; k += 1) {
    const o = w.obstacles[k] as Obstacle; // k stays within
    if (!boxesMeet(w, k, x0, y0, x1, y1, 0)) continue;
    if (o.bottomM > z + 2 * BALL_RADIUS_M || o.topM < z || insideRing(o.ringM, x0, y0)) continue;
    const share = sideShare(o.ringM, x0, y0, x1, y1);
    if (share > 1) continue;
    marks[MARK_OBSTRUCTED] = MET_OBSTACLE;
    const length = Math.max(HAIR_M, Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0)));
    const tree = o.kind === 'tree';
    const u = Math.max(0, share + (tree ? HAIR_M : -HAIR_M) / length);
    s[X] = x0 + u * (x1 - x0);
    s[Y] = y0 + u * (y1 - y0);
    // Speed at the side: between the two ends of the step.
    const vx = (s[VX] as number) + share * ((n[VX] as number) - (s[VX] as number));
    const vy = (s[VY] as number) + share * ((n[VY] as number) - (s[VY] as number));
    if (tree) {
      s[Z] = z;
      const keeps = crownKeeps(w, o, vx, vy, 0);
      s[VX] = keeps * vx;
      s[VY] = keeps * vy;
    } else offWall(s, vx, vy);
    return true;
  }
  return false;
}
