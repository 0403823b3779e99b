import { VX, VY, VZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { hermite } from './hermite.ts';
import type { ShotWork } from './shotWork.ts';

/** Steeper ground than this (rise over run) between two looks may be met late, never missed for good. */
const STEEPEST = 0.6;
/** Looks at the ground are at least this far apart, metres along the plane. */
const LEAST_TRAVEL_M = 0.18;
/** Within this travel the plane under the ball predicts the contact. */
const JUMP_M = 0.8;
const CONTACT_M = 3e-4;
const MOST_LOOKS = 4000;

/**
 * Time into the step at which the ball meets the ground, with `here` left there; -1 if it does not. Looks ahead no
 * farther than the ball could fall onto ground of the steepest kind, then by the plane under it.
 */
export function contactTime(w: ShotWork, h: number): number {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  const ground = w.ground;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const z0 = s[Z] as number;
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vz0 = s[VZ] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const z1 = n[Z] as number;
  const vx1 = n[VX] as number;
  const vy1 = n[VY] as number;
  const vz1 = n[VZ] as number;
  let t = 0;
  let clear = z0 - (here[0] as number);
  let above = 0;
  let aboveClear = clear;
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    const u = t / h;
    const vx = vx0 + u * (vx1 - vx0);
    const vy = vy0 + u * (vy1 - vy0);
    const vz = vz0 + u * (vz1 - vz0);
    const closing = vz - (here[1] as number) * vx - (here[2] as number) * vy;
    const across = Math.sqrt(vx * vx + vy * vy);
    if (clear < 0) {
      if (closing < 0) {
        // Met between the last look above the ground and this one.
        if (clear > -CONTACT_M || t - above < 1e-7) return Math.max(0, t - clear / closing);
        const share =
          aboveClear > 0 ? Math.max(0.05, Math.min(0.95, aboveClear / (aboveClear - clear))) : 0.5;
        t = above + (t - above) * share;
        const v = t / h;
        ground.sample(hermite(x0, vx0, x1, vx1, h, v), hermite(y0, vy0, y1, vy1, h, v), here);
        clear = hermite(z0, vz0, z1, vz1, h, v) - (here[0] as number);
        if (clear >= 0) {
          above = t;
          aboveClear = clear;
        }
        continue;
      }
      clear = 0;
    }
    above = t;
    aboveClear = clear;
    const plane = (closing + Math.sqrt(closing * closing + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
    let ahead: number;
    let jumped = false;
    if (plane * across <= JUMP_M) {
      ahead = plane;
      jumped = true;
      if (ahead < 1e-7) return t;
    } else {
      const worst = vz - STEEPEST * across;
      const safe = (worst + Math.sqrt(worst * worst + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
      ahead = Math.max(safe, (w.stepFactor * LEAST_TRAVEL_M) / across);
    }
    if (t + ahead >= h) return -1;
    t += ahead;
    const v = t / h;
    ground.sample(hermite(x0, vx0, x1, vx1, h, v), hermite(y0, vy0, y1, vy1, h, v), here);
    clear = hermite(z0, vz0, z1, vz1, h, v) - (here[0] as number);
    if (jumped && Math.abs(clear) < CONTACT_M) {
      const wz = vz0 + v * (vz1 - vz0);
      const wx = vx0 + v * (vx1 - vx0);
      const wy = vy0 + v * (vy1 - vy0);
      const rate = wz - (here[1] as number) * wx - (here[2] as number) * wy;
      if (rate < 0) return Math.max(0, t - clear / rate);
    }
  }
  return -1;
}
