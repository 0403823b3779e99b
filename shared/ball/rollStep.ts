import { VX, VY, X, Y } from './bounce.ts';
import { SLOPE_PULL_MPS2 } from './constants.ts';
import { hermite, hermiteSlope } from './hermite.ts';
import { type ShotWork, STEP_S } from './shotWork.ts';

/** How exactly the edge of a cover is found along the way. */
const EDGE_M = 4e-4;

/**
 * Runge-Kutta step of a rolling ball from `state` to `next` through the gradients of `here`, `probe2` half-way and `probe`
 * at the end, against what slows it on its cover.
 */
export function rollStep(w: ShotWork): void {
  const h = w.step[STEP_S] as number; // arrays here have fixed sizes, set once in shotWork
  const a = w.slowing[0] as number;
  const grainX = w.slowing[1] as number;
  const grainY = w.slowing[2] as number;
  const gx0 = SLOPE_PULL_MPS2 * (w.here[1] as number) + grainX;
  const gy0 = SLOPE_PULL_MPS2 * (w.here[2] as number) + grainY;
  const gxm = SLOPE_PULL_MPS2 * (w.probe2[1] as number) + grainX;
  const gym = SLOPE_PULL_MPS2 * (w.probe2[2] as number) + grainY;
  const gx1 = SLOPE_PULL_MPS2 * (w.probe[1] as number) + grainX;
  const gy1 = SLOPE_PULL_MPS2 * (w.probe[2] as number) + grainY;
  const s = w.state;
  const n = w.next;
  const vx = s[VX] as number;
  const vy = s[VY] as number;
  const half = h / 2;
  let f = a / Math.sqrt(vx * vx + vy * vy);
  const ax1 = -f * vx - gx0;
  const ay1 = -f * vy - gy0;
  let ux = vx + half * ax1;
  let uy = vy + half * ay1;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax2 = -f * ux - gxm;
  const ay2 = -f * uy - gym;
  ux = vx + half * ax2;
  uy = vy + half * ay2;
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

/**
 * Shortens the step to where the ball leaves its cover, just beyond the edge, which lies in the first half of the step or
 * in the second.
 */
export function stopAtEdge(w: ShotWork, inFirstHalf: boolean): void {
  const h = w.step[STEP_S] as number;
  const code = w.here[3] as number;
  const at = w.at;
  let high = inFirstHalf ? 0.5 : 1;
  const s = w.state;
  const n = w.next;
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
  cutStep(w, high);
}

/** Cover at the point asked of the ground. */
function codeAt(w: ShotWork): number {
  if (w.ground.codeAt !== undefined) return w.ground.codeAt(w.at);
  w.ground.sample(w.at, w.probe2);
  return w.probe2[3] as number;
}

/** Shortens the step from `state` to `next` to a share of it. */
function cutStep(w: ShotWork, u: number): void {
  const h = w.step[STEP_S] as number;
  const s = w.state;
  const n = w.next;
  for (let i = 0; i < 2; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    n[i] = hermite(a, va, b, vb, h, u);
    n[i + 3] = hermiteSlope(a, va, b, vb, h, u);
  }
  w.step[STEP_S] = u * h;
}

/** By hand: a call of `set` costs as much as a sample of the ground. */
export function copyGround(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < 4; i += 1) to[i] = from[i] as number;
}
