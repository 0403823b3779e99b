import { VX, VY, X, Y } from './bounce.ts';
import { CAPTURED, meetHole } from './capture.ts';
import { HOLE_RADIUS_M } from './constants.ts';
import { hermite } from './hermite.ts';
import { STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, times, velocity } = shotMemory;

/** The hole is looked for this much farther off than the piece is long, which may be bent. */
const WIDER = 1.1;

/**
 * Looks whether the piece of path from `state` to `next` crosses the hole. 0: no. 1: the ball dropped. 2: it came out
 * again, and `state` stands beyond the rim with what speed it has left.
 */
export function passHole(w: ShotWork): number {
  if (!w.hasHole) return 0;
  const h = times[STEP_S] as number; // arrays of fixed size, set once in shotMemory
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const hx = w.holeEastM;
  const hy = w.holeNorthM;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const away = (hx - x0) * (hx - x0) + (hy - y0) * (hy - y0);
  // Most pieces are so far from the hole that no root need be taken: (a + b)^2 <= 2 a^2 + 2 b^2.
  const way2 = dx * dx + dy * dy;
  if (away > 2 * (WIDER * WIDER * way2 + HOLE_RADIUS_M * HOLE_RADIUS_M)) return 0;
  const reach = Math.sqrt(way2) * WIDER + HOLE_RADIUS_M;
  if (away > reach * reach) return 0;
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vx1 = n[VX] as number;
  const vy1 = n[VY] as number;
  // Closest approach: the chord first, then the curve about it.
  let u = way2 > 0 ? Math.min(1, Math.max(0, ((hx - x0) * dx + (hy - y0) * dy) / way2)) : 0;
  let px = 0;
  let py = 0;
  let vx = 0;
  let vy = 0;
  for (let k = 0; k < 4; k += 1) {
    px = hermite(x0, vx0, x1, vx1, h, u);
    py = hermite(y0, vy0, y1, vy1, h, u);
    vx = vx0 + u * (vx1 - vx0);
    vy = vy0 + u * (vy1 - vy0);
    const v2 = vx * vx + vy * vy;
    if (v2 < 1e-12) break;
    const shift = ((hx - px) * vx + (hy - py) * vy) / (v2 * h);
    const to = Math.min(1, Math.max(0, u + shift));
    if (Math.abs(to - u) < 1e-9) break;
    u = to;
  }
  const gx = hx - px;
  const gy = hy - py;
  const apart = Math.sqrt(gx * gx + gy * gy);
  if (apart >= HOLE_RADIUS_M) return 0;
  // Still on its way in: the closest point lies in the next piece.
  if (u >= 1 && gx * vx + gy * vy > 1e-9 && vx * vx + vy * vy > 1e-8) return 0;
  const cross = vx * gy - vy * gx; // positive with the hole to the left
  velocity[0] = vx;
  velocity[1] = vy;
  if (
    meetHole(velocity, cross > 0 ? -apart : apart, w.flagstickIn, w.holeSlopeEast, w.holeSlopeNorth) ===
    CAPTURED
  )
    return 1;
  const wx = velocity[0];
  const wy = velocity[1];
  const speed = Math.sqrt(wx * wx + wy * wy);
  // Out over the rim along the new line.
  const along = (gx * wx + gy * wy) / speed;
  const out =
    along + Math.sqrt(Math.max(0, HOLE_RADIUS_M * HOLE_RADIUS_M - apart * apart + along * along)) + 1e-6;
  s[X] = px + (out * wx) / speed;
  s[Y] = py + (out * wy) / speed;
  s[VX] = wx;
  s[VY] = wy;
  return 2;
}
