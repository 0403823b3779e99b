import { coverCode } from '../words/vocabulary.ts';
import { VX, VY, VZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { CONTACT_S, STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, here, at, times } = shotMemory;

const SAND = coverCode('bunker');
/**
 * Ground steeper than this (rise over run) between two looks is met late, by what the ball sank into it; a ridge of it
 * narrower than the way between two looks may be passed. In a bunker a face rises at two to one at its steepest.
 */
const STEEPEST = 0.6;
const STEEPEST_IN_SAND = 2;
/** Looks at the ground are at least this far apart, metres along the plane. */
const LEAST_TRAVEL_M = 0.18;
const LEAST_TRAVEL_IN_SAND_M = 0.06;
/** Within this travel the plane under the ball predicts the contact. */
const JUMP_M = 0.8;
const CONTACT_M = 1e-4;
/** So near in time, s, the rest of the way to grass is straight; a face of sand bends within millimetres. */
const CONTACT_WITHIN_S = 5e-4;
const MOST_LOOKS = 4000;

/** What `lookForGround` finds: contact, or none, with or without a look at the ground under the end of the step. */
export const MET_GROUND = 1;
export const CLEAR_SEEN = 0;
export const CLEAR_UNSEEN = -1;

/**
 * Whether the ball meets the ground within the step, and when (`CONTACT_S`), with the ground there left in `here`; where
 * it does not and has looked, `here` is the ground under the end of the step. Looks ahead no farther than the ball could
 * fall onto ground of the steepest kind, then by the plane under it.
 */
export function lookForGround(w: ShotWork): number {
  const ground = w.ground;
  const h = times[STEP_S] as number; // arrays here have fixed sizes, set once in shotMemory
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vz0 = s[VZ] as number;
  const dvx = (n[VX] as number) - vx0;
  const dvy = (n[VY] as number) - vy0;
  const dvz = (n[VZ] as number) - vz0;
  // The cubic through both ends in each coordinate, a + u (h v0 + u (c + u d)): written out, for it is asked many times.
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const z0 = s[Z] as number;
  const hx = h * vx0;
  const hy = h * vy0;
  const hz = h * vz0;
  const wayX = (n[X] as number) - x0 - hx;
  const wayY = (n[Y] as number) - y0 - hy;
  const wayZ = (n[Z] as number) - z0 - hz;
  const dx = h * dvx - 2 * wayX;
  const dy = h * dvy - 2 * wayY;
  const dz = h * dvz - 2 * wayZ;
  const cx = wayX - dx;
  const cy = wayY - dy;
  const cz = wayZ - dz;

  let t = 0;
  let clear = z0 - (here[0] as number);
  let above = 0;
  let aboveClear = clear;
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    let u = t / h;
    const vx = vx0 + u * dvx;
    const vy = vy0 + u * dvy;
    const vz = vz0 + u * dvz;
    const closing = vz - (here[1] as number) * vx - (here[2] as number) * vy;
    const across = Math.sqrt(vx * vx + vy * vy);
    let jumped = false;
    if (clear < 0 && (closing < 0 || t > above)) {
      // Met between the last look above the ground and this one, however the plane here looks: a ball that has gone into a
      // face may be under the flat ground above it by now, and on its way out of that.
      if (closing < 0 && clear > -CONTACT_M) {
        times[CONTACT_S] = Math.max(0, t - clear / closing);
        return MET_GROUND;
      }
      if (t - above < 1e-7) {
        times[CONTACT_S] = above;
        return MET_GROUND;
      }
      const share = aboveClear > 0 ? Math.max(0.05, Math.min(0.95, aboveClear / (aboveClear - clear))) : 0.5;
      t = above + (t - above) * share;
    } else {
      clear = Math.max(0, clear);
      above = t;
      aboveClear = clear;
      if (t >= h) return CLEAR_SEEN;
      const sand = here[3] === SAND;
      const plane = (closing + Math.sqrt(closing * closing + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
      let ahead: number;
      if (plane * across <= JUMP_M) {
        ahead = plane;
        jumped = true;
        if (ahead < 1e-7) {
          times[CONTACT_S] = t;
          return MET_GROUND;
        }
      } else {
        const worst = vz - (sand ? STEEPEST_IN_SAND : STEEPEST) * across;
        const safe = (worst + Math.sqrt(worst * worst + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
        if (t + safe >= h) return CLEAR_UNSEEN;
        ahead = Math.max(
          safe,
          (w.stepFactor * (sand ? LEAST_TRAVEL_IN_SAND_M : LEAST_TRAVEL_M)) / (across + 1e-9),
        );
      }
      t = Math.min(h, t + ahead);
    }
    u = t / h;
    at[0] = x0 + u * (hx + u * (cx + u * dx));
    at[1] = y0 + u * (hy + u * (cy + u * dy));
    ground.sample(at, here);
    clear = z0 + u * (hz + u * (cz + u * dz)) - (here[0] as number);
    if (jumped && t < h) {
      const rate =
        vz0 + u * dvz - (here[1] as number) * (vx0 + u * dvx) - (here[2] as number) * (vy0 + u * dvy);
      const near = here[3] === SAND ? CONTACT_M : Math.max(CONTACT_M, -rate * CONTACT_WITHIN_S);
      if (rate < 0 && Math.abs(clear) < near) {
        times[CONTACT_S] = Math.max(0, t - clear / rate);
        return MET_GROUND;
      }
    }
  }
  return CLEAR_SEEN;
}
