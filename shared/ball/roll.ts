import { coverCode } from '../words/vocabulary.ts';
import { VX, VY, X, Y } from './bounce.ts';
import { SLOPE_PULL_MPS2 } from './constants.ts';
import { meetOnGround } from './obstacles.ts';
import { passHole } from './passHole.ts';
import { boundary, dropsAtRest, ROLL_HOLED, ROLL_STILL_ROLLING } from './rollEnd.ts';
import { recordPiece, recordRoll } from './rollRecord.ts';
import { copyGround, keepEnergy, rollStep, stopAtEdge } from './rollStep.ts';
import { STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';
import {
  STOP_DX,
  STOP_DY,
  STOP_PULL_X,
  STOP_PULL_Y,
  STOP_RESISTANCE,
  STOP_VX,
  STOP_VY,
  stopDisplacement,
  stopTime,
} from './stopDisplacement.ts';

const { state: s, next: n, here, probe, probe2, stop, slowing, at, times } = shotMemory;

const GREEN = coverCode('green');
const SAND = coverCode('bunker');
/** Longest piece of roll in one step, metres. */
const LONGEST_M = 1.6;
/** A rest of the way shorter than this is done at once, on the plane half-way along it. */
const LAST_M = 0.5;
/** The same two in a bunker, whose face is a third of a metre wide or little more. */
const LONGEST_IN_SAND_M = 0.12;
const LAST_IN_SAND_M = 0.06;
/** Share of its velocity that a ball changes in one step, at most, and of what slows it that is counted where both cancel. */
const CHANGE = 0.3;
const LEAST_COUNTED = 0.125;
/** A step that the ball may not get to the end of is taken again at half its length, unless it is as short as this, metres. */
const SHORTEST_M = 0.01;
/** The last piece is none where the ground along it is no plane: this share of the energy it starts with goes elsewhere. */
const OFF_PLANE = 0.01;
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
 * A step reads the ground half-way and at its end and runs a Runge-Kutta step through that gradient; its speed at the end is
 * the one its energy leaves it (`keepEnergy`). The last piece is the exact stop of a rolling ball on a plane (see
 * `stopDisplacement`). Covers change at an edge found to 0.4 mm.
 */
export function roll(w: ShotWork): number {
  const ground = w.ground;
  const factor = w.stepFactor;
  let elapsed = 0;
  let rolled = 0;
  /** Halved while a step asks too much. */
  let share = 1;
  let walls = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const code = here[3] as number;
    const over = boundary(code);
    if (over >= 0) return over;
    let vx = s[VX] as number;
    let vy = s[VY] as number;
    let speed = Math.sqrt(vx * vx + vy * vy);
    const a = w.covers.rollingMps2[code] as number;
    const grainX = code === GREEN ? w.grainEastMps2 : 0;
    const grainY = code === GREEN ? w.grainNorthMps2 : 0;
    slowing[0] = a;
    slowing[1] = grainX;
    slowing[2] = grainY;
    let gx = SLOPE_PULL_MPS2 * (here[1] as number) + grainX;
    let gy = SLOPE_PULL_MPS2 * (here[2] as number) + grainY;
    const slope = Math.sqrt(gx * gx + gy * gy);
    const last = factor * (code === SAND ? LAST_IN_SAND_M : LAST_M);
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
    if (slope < 0.97 * a && speed * speed < 4 * last * (a + slope)) {
      stop[STOP_VX] = vx;
      stop[STOP_VY] = vy;
      stop[STOP_PULL_X] = gx;
      stop[STOP_PULL_Y] = gy;
      stop[STOP_RESISTANCE] = a;
      stopDisplacement(stop);
      let dx = stop[STOP_DX] as number;
      let dy = stop[STOP_DY] as number;
      const far2 = dx * dx + dy * dy;
      if (far2 < last * last || speed < 0.02) {
        at[0] = x + dx / 2;
        at[1] = y + dy / 2;
        ground.sample(at, probe2);
        const sameCover = probe2[3] === code;
        gx = SLOPE_PULL_MPS2 * (probe2[1] as number) + grainX;
        gy = SLOPE_PULL_MPS2 * (probe2[2] as number) + grainY;
        const slope2 = Math.sqrt(gx * gx + gy * gy);
        if (slope2 < 0.97 * a) {
          stop[STOP_PULL_X] = gx;
          stop[STOP_PULL_Y] = gy;
          stopDisplacement(stop);
          dx = stop[STOP_DX] as number;
          dy = stop[STOP_DY] as number;
          n[X] = x + dx;
          n[Y] = y + dy;
          ground.sample(n, probe);
          const unplanned =
            (probe[0] as number) -
            (here[0] as number) -
            ((probe2[1] as number) * dx + (probe2[2] as number) * dy);
          const onPlane = Math.abs(2 * SLOPE_PULL_MPS2 * unplanned) < OFF_PLANE * speed * speed;
          if ((sameCover && probe[3] === code && onPlane) || far2 < 1e-4) {
            n[VX] = 0;
            n[VY] = 0;
            if (w.obstacles.length > 0 && meetOnGround(w)) {
              ground.sample(s, here);
              recordRoll(w);
              walls += 1;
              if (walls > MOST_WALLS) return dropsAtRest(w);
              continue;
            }
            times[STEP_S] = stopTime(speed, dx, dy);
            const met = passHole(w);
            if (met === 1) return ROLL_HOLED;
            if (met === 2) {
              ground.sample(s, here);
              recordRoll(w);
              continue;
            }
            recordPiece(w);
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
    // Look at the ground where the ball will be half-way and at the end, near enough.
    const bx = -a * (vx / speed) - gx;
    const by = -a * (vy / speed) - gy;
    const change = Math.max(Math.sqrt(bx * bx + by * by), LEAST_COUNTED * (a + slope));
    const longest = code === SAND ? LONGEST_IN_SAND_M : LONGEST_M;
    const h = share * factor * Math.min(longest / speed, (CHANGE * speed) / change);
    if (elapsed + h > LONGEST_ROLL_S || rolled > FARTHEST_ROLL_M) return ROLL_STILL_ROLLING;
    at[0] = x + h * (vx / 2 + (h * bx) / 8);
    at[1] = y + h * (vy / 2 + (h * by) / 8);
    ground.sample(at, probe2);
    at[0] = x + h * (vx + (h * bx) / 2);
    at[1] = y + h * (vy + (h * by) / 2);
    ground.sample(at, probe);
    times[STEP_S] = h;
    rollStep();
    // Read where the ball would be but for the bend of its way.
    probe[0] =
      (probe[0] as number) +
      (probe[1] as number) * ((n[X] as number) - at[0]) +
      (probe[2] as number) * ((n[Y] as number) - at[1]);
    const midCode = probe2[3] as number;
    if (midCode !== code || probe[3] !== code) {
      stopAtEdge(w, midCode !== code);
      ground.sample(n, probe);
    }
    if (!keepEnergy() && h * speed > SHORTEST_M) {
      share *= 0.5;
      continue;
    }
    share = 1;
    const used = times[STEP_S];
    if (w.obstacles.length > 0 && meetOnGround(w)) {
      ground.sample(s, here);
      recordRoll(w);
      walls += 1;
      if (walls > MOST_WALLS) return dropsAtRest(w);
      elapsed += used;
      continue;
    }
    const met = passHole(w);
    if (met === 1) return ROLL_HOLED;
    if (met === 2) {
      ground.sample(s, here);
    } else {
      recordPiece(w);
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
