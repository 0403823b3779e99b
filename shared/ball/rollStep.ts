import { VX, VY, X, Y } from './bounce.ts';
import { SLOPE_PULL_MPS2 } from './constants.ts';
import { hermite, hermiteSlope } from './hermite.ts';
import { STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, here: from, probe2: half, probe: to, at, times, slowing } = shotMemory;

/** How exactly the edge of a cover is found along the way. */
const EDGE_M = 4e-4;

/**
 * Runge-Kutta step of a rolling ball from `state` to `next` through the gradients of `here`, `probe2` half-way and `probe`
 * at the end, against what slows it on its cover.
 */
export function rollStep(): void {
  const h = times[STEP_S] as number; // arrays here have fixed sizes, set once in shotMemory
  const a = slowing[0] as number;
  const grainX = slowing[1] as number;
  const grainY = slowing[2] as number;
  const gx0 = SLOPE_PULL_MPS2 * (from[1] as number) + grainX;
  const gy0 = SLOPE_PULL_MPS2 * (from[2] as number) + grainY;
  const gxm = SLOPE_PULL_MPS2 * (half[1] as number) + grainX;
  const gym = SLOPE_PULL_MPS2 * (half[2] as number) + grainY;
  const gx1 = SLOPE_PULL_MPS2 * (to[1] as number) + grainX;
  const gy1 = SLOPE_PULL_MPS2 * (to[2] as number) + grainY;
  const vx = s[VX] as number;
  const vy = s[VY] as number;
  const middle = h / 2;
  let f = a / Math.sqrt(vx * vx + vy * vy);
  const ax1 = -f * vx - gx0;
  const ay1 = -f * vy - gy0;
  let ux = vx + middle * ax1;
  let uy = vy + middle * ay1;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax2 = -f * ux - gxm;
  const ay2 = -f * uy - gym;
  ux = vx + middle * ax2;
  uy = vy + middle * ay2;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax3 = -f * ux - gxm;
  const ay3 = -f * uy - gym;
  ux = vx + h * ax3;
  uy = vy + h * ay3;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax4 = -f * ux - gx1;
  const ay4 = -f * uy - gy1;
  const sixth = h / 6;
  n[X] = (s[X] as number) + h * (vx + sixth * (ax1 + ax2 + ax3));
  n[Y] = (s[Y] as number) + h * (vy + sixth * (ay1 + ay2 + ay3));
  n[VX] = vx + sixth * (ax1 + 2 * (ax2 + ax3) + ax4);
  n[VY] = vy + sixth * (ay1 + 2 * (ay2 + ay3) + ay4);
}

/** A way that turns is longer than its chord by this share of the square of the turn. */
const CHORD_TO_ARC = 1 / 24;
/** A ball that keeps less than this of the speed squared that a step gives it may not get to its end. */
const LEAST_KEPT = 0.25;
/** From this difference in speed squared on, m^2/s^2, there is a crease within the step: some millimetres of height. */
const CREASE_M2PS2 = 0.02;
/** A ball crosses a crease where this share of its speed is square to it; else it runs along it. */
const ACROSS = 0.5;

/**
 * Gives the ball at `next` the speed that its energy leaves it: what the climb, the grass and the grain take is exact
 * however the ground bends on the way, while a step that reads it three times mistakes a crease, such as the crest of a
 * tier. What the step got wrong there is the push across the crease, which is where the gradient changes along. Needs the height
 * under `next` in `probe`. False, and nothing changed, where the ball may not get so far.
 */
export function keepEnergy(): boolean {
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vx = n[VX] as number;
  const vy = n[VY] as number;
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const before = vx0 * vx0 + vy0 * vy0;
  const after = vx * vx + vy * vy;
  const cross = vx0 * vy - vy0 * vx;
  const way = Math.sqrt(dx * dx + dy * dy) * (1 + (CHORD_TO_ARC * cross * cross) / (before * after + 1e-30));
  const taken =
    (slowing[0] as number) * way +
    SLOPE_PULL_MPS2 * ((to[0] as number) - (from[0] as number)) +
    (slowing[1] as number) * dx +
    (slowing[2] as number) * dy;
  const left = before - 2 * taken;
  if (!(left > LEAST_KEPT * after)) return false;
  if (Math.abs(left - after) > CREASE_M2PS2) {
    // The change of the gradient over the step, or that of its middle against both ends where that is more.
    const gx = (to[1] as number) - (from[1] as number);
    const gy = (to[2] as number) - (from[2] as number);
    const kx = 2 * (half[1] as number) - (from[1] as number) - (to[1] as number);
    const ky = 2 * (half[2] as number) - (from[2] as number) - (to[2] as number);
    const bump = kx * kx + ky * ky > gx * gx + gy * gy;
    const cx = bump ? kx : gx;
    const cy = bump ? ky : gy;
    const size = Math.sqrt(cx * cx + cy * cy) + 1e-30;
    const across = (vx * cx + vy * cy) / size;
    const across2 = across * across + left - after;
    if (across * across > ACROSS * ACROSS * after && across2 > 0) {
      const push = Math.sign(across) * Math.sqrt(across2) - across;
      n[VX] = vx + (push * cx) / size;
      n[VY] = vy + (push * cy) / size;
      return true;
    }
  }
  const scale = Math.sqrt(left / after);
  n[VX] = vx * scale;
  n[VY] = vy * scale;
  return true;
}

/**
 * Shortens the step to where the ball leaves its cover, just beyond the edge, which lies in the first half of the step or
 * in the second.
 */
export function stopAtEdge(w: ShotWork, inFirstHalf: boolean): void {
  const h = times[STEP_S] as number;
  const code = from[3] as number;
  let high = inFirstHalf ? 0.5 : 1;
  let low = 0;
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const length = Math.sqrt(dx * dx + dy * dy);
  while ((high - low) * length > EDGE_M) {
    const u = (low + high) / 2;
    at[0] = hermite(s[X] as number, s[VX] as number, n[X] as number, n[VX] as number, h, u);
    at[1] = hermite(s[Y] as number, s[VY] as number, n[Y] as number, n[VY] as number, h, u);
    if (codeAt(w) === code) low = u;
    else high = u;
  }
  cutStep(high);
}

/** Cover at the point asked of the ground. */
function codeAt(w: ShotWork): number {
  if (w.ground.codeAt !== undefined) return w.ground.codeAt(at);
  w.ground.sample(at, half);
  return half[3] as number;
}

/** Shortens the step from `state` to `next` to a share of it. */
function cutStep(u: number): void {
  const h = times[STEP_S] as number;
  for (let i = 0; i < 2; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    n[i] = hermite(a, va, b, vb, h, u);
    n[i + 3] = hermiteSlope(a, va, b, vb, h, u);
  }
  times[STEP_S] = u * h;
}

/** By hand: a call of `set` costs as much as a sample of the ground. */
export function copyGround(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < 4; i += 1) to[i] = from[i] as number;
}
