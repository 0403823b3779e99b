import { VX, VY, X, Y } from './bounce.ts';
import { hermite } from './hermite.ts';
import { STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, here, probe2, at, times } = shotMemory;

/** Marks where the ball is, for drawing. */
export function recordRoll(w: ShotWork): void {
  if (w.record !== null) w.record.points.push(s[X] as number, s[Y] as number, here[0] as number);
}

/** Marks points within the piece from `state` to `next` for drawing, every 0.15 m or so. */
export function recordPiece(w: ShotWork): void {
  if (w.record === null) return;
  const h = times[STEP_S] as number; // arrays of fixed size, set once in shotMemory
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const parts = Math.ceil(Math.sqrt(dx * dx + dy * dy) / 0.15);
  for (let k = 1; k < parts; k += 1) {
    const u = k / parts;
    const px = hermite(s[X] as number, s[VX] as number, n[X] as number, n[VX] as number, h, u);
    const py = hermite(s[Y] as number, s[VY] as number, n[Y] as number, n[VY] as number, h, u);
    at[0] = px;
    at[1] = py;
    w.ground.sample(at, probe2);
    w.record.points.push(px, py, probe2[0] as number);
  }
}
