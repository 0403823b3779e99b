import { coverCode } from '../words/vocabulary.ts';
import { VX, VY, X, Y } from './bounce.ts';
import { SLOPE_PULL_MPS2 } from './constants.ts';
import { meetOnGround } from './obstacles.ts';
import { passHole } from './passHole.ts';
import { boundary, dropsAtRest, ROLL_HOLED, ROLL_STILL_ROLLING } from './rollEnd.ts';
import { recordPiece, recordRoll } from './rollRecord.ts';
import { cutStep, edgeShare, rollStep } from './rollStep.ts';
import type { ShotWork } from './shotWork.ts';
import { stopDisplacement, stopTime } from './stopDisplacement.ts';

const GREEN = coverCode('green');
/** Longest piece of roll in one step, metres. */
const LONGEST_M = 1.25;
/** A rest of the way shorter than this is done at once, on the plane half-way along it. */
const LAST_M = 0.8;
/** Steps shorten to this where the slope bends, m/s^2 of pull against a straight change over the step. */
const SHORTEST_M = 0.3;
const BEND_MPS2 = 0.03;
/** Below this speed a ball that the slope outdoes starts again down the fall line. */
const STALL_MPS = 0.01;
/** A ball that has rolled this long or this far has no rest on this ground. */
const LONGEST_ROLL_S = 300;
const FARTHEST_ROLL_M = 300;
/** A ball that has met a wall this often lies against it. */
const MOST_WALLS = 20;
const MOST_STEPS = 1_000_000;

/**
 * Rolls the ball from `state` (pure rolling) over the ground to its end. Newton on a rolling sphere: deceleration by the
 * grass along its way and 5/7 g along the slope (Penner 2002, "The physics of putting"; from memory).
 *
 * A step reads the ground half-way and at its end and runs a Runge-Kutta step through that gradient. The last piece is
 * the exact stop of a rolling ball on a plane (see `stopDisplacement`). Covers change at an edge found to 0.4 mm.
 */
export function roll(w: ShotWork): number {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  const probe = w.probe;
  const probe2 = w.probe2;
  const ground = w.ground;
  const scratch = w.scratch;
  const factor = w.stepFactor;
  let elapsed = 0;
  let rolled = 0;
  let longest = LONGEST_M * factor;
  let walls = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const code = here[3] as number;
    const over = boundary(w, code);
    if (over >= 0) return over;
    let vx = s[VX] as number;
    let vy = s[VY] as number;
    let speed = Math.sqrt(vx * vx + vy * vy);
    const a = w.covers.rollingMps2[code] as number;
    const grainX = code === GREEN ? w.grainEastMps2 : 0;
    const grainY = code === GREEN ? w.grainNorthMps2 : 0;
    let gx = SLOPE_PULL_MPS2 * (here[1] as number) + grainX;
    let gy = SLOPE_PULL_MPS2 * (here[2] as number) + grainY;
    const slope = Math.sqrt(gx * gx + gy * gy);
    if (speed < STALL_MPS) {
      if (slope <= a) return dropsAtRest(w);
      vx = (-gx / slope) * STALL_MPS * 1.01;
      vy = (-gy / slope) * STALL_MPS * 1.01;
      s[VX] = vx;
      s[VY] = vy;
      speed = STALL_MPS * 1.01;
    }
    const x = s[X] as number;
    const y = s[Y] as number;
    // No ball stops in less than v^2 / 2(a + s) of path: only near that is the exact stop worth working out.
    if (slope < 0.97 * a && speed * speed < 4 * LAST_M * factor * (a + slope)) {
      stopDisplacement(vx, vy, speed, gx, gy, slope, a, scratch);
      let dx = scratch[0] as number;
      let dy = scratch[1] as number;
      const far2 = dx * dx + dy * dy;
      if (far2 < LAST_M * LAST_M * factor * factor || speed < 0.02) {
        ground.sample(x + dx / 2, y + dy / 2, probe2);
        let sameCover = probe2[3] === code;
        gx = SLOPE_PULL_MPS2 * (probe2[1] as number) + grainX;
        gy = SLOPE_PULL_MPS2 * (probe2[2] as number) + grainY;
        const slope2 = Math.sqrt(gx * gx + gy * gy);
        if (slope2 < 0.97 * a) {
          stopDisplacement(vx, vy, speed, gx, gy, slope2, a, scratch);
          dx = scratch[0] as number;
          dy = scratch[1] as number;
          ground.sample(x + dx, y + dy, probe);
          sameCover = sameCover && probe[3] === code;
          if (sameCover || far2 < 1e-4) {
            n[X] = x + dx;
            n[Y] = y + dy;
            n[VX] = 0;
            n[VY] = 0;
            if (w.obstacles.length > 0 && meetOnGround(w)) {
              ground.sample(s[X] as number, s[Y] as number, here);
              recordRoll(w);
              walls += 1;
              if (walls > MOST_WALLS) return dropsAtRest(w);
              continue;
            }
            const met = passHole(w, stopTime(speed, dx, dy));
            if (met === 1) return ROLL_HOLED;
            if (met === 2) {
              ground.sample(s[X] as number, s[Y] as number, here);
              recordRoll(w);
              continue;
            }
            recordPiece(w, stopTime(speed, dx, dy));
            s[X] = x + dx;
            s[Y] = y + dy;
            s[VX] = 0;
            s[VY] = 0;
            copyGround(probe, here);
            recordRoll(w);
            // A slope that holds no ball sends it on: the next turn of the loop decides.
            continue;
          }
        }
      }
    }
    const h = Math.min(longest / speed, (factor * 0.5 * speed) / (a + slope));
    if (elapsed + h > LONGEST_ROLL_S || rolled > FARTHEST_ROLL_M) return ROLL_STILL_ROLLING;
    // Look at the ground where the ball will be half-way and at the end, near enough.
    const bx = -a * (vx / speed) - gx;
    const by = -a * (vy / speed) - gy;
    gx = SLOPE_PULL_MPS2 * (here[1] as number);
    gy = SLOPE_PULL_MPS2 * (here[2] as number);
    ground.sample(x + h * (vx / 2 + (h * bx) / 8), y + h * (vy / 2 + (h * by) / 8), probe2);
    ground.sample(x + h * (vx + (h * bx) / 2), y + h * (vy + (h * by) / 2), probe);
    rollStep(w, h, a, grainX, grainY);
    const bend =
      Math.abs(gx + SLOPE_PULL_MPS2 * ((probe[1] as number) - 2 * (probe2[1] as number))) +
      Math.abs(gy + SLOPE_PULL_MPS2 * ((probe[2] as number) - 2 * (probe2[2] as number)));
    longest =
      factor *
      Math.max(
        SHORTEST_M,
        bend > BEND_MPS2 ? (h * speed * 0.6) / factor : Math.min(LONGEST_M, (longest / factor) * 1.5),
      );
    let used = h;
    const midCode = probe2[3] as number;
    if (midCode !== code || probe[3] !== code) {
      used = edgeShare(w, h, code, midCode !== code ? 0.5 : 1) * h;
      cutStep(w, h, used / h);
      ground.sample(n[X] as number, n[Y] as number, probe);
    }
    if (w.obstacles.length > 0 && meetOnGround(w)) {
      ground.sample(s[X] as number, s[Y] as number, here);
      recordRoll(w);
      walls += 1;
      if (walls > MOST_WALLS) return dropsAtRest(w);
      elapsed += used;
      continue;
    }
    const met = passHole(w, used);
    if (met === 1) return ROLL_HOLED;
    if (met === 2) {
      ground.sample(s[X] as number, s[Y] as number, here);
    } else {
      recordPiece(w, used);
      s[X] = n[X] as number;
      s[Y] = n[Y] as number;
      s[VX] = n[VX] as number;
      s[VY] = n[VY] as number;
      copyGround(probe, here);
    }
    recordRoll(w);
    elapsed += used;
    rolled += used * speed;
  }
  return ROLL_STILL_ROLLING;
}

/** By hand: a call of `set` costs as much as a sample of the ground. */
function copyGround(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < 4; i += 1) to[i] = from[i] as number;
}
