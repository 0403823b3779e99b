import { VX, VY, X, Y } from './bounce.ts';
import { hermite } from './hermite.ts';
import { type ShotWork, STEP_S } from './shotWork.ts';

/** Marks where the ball is, for drawing. */
export function recordRoll(w: ShotWork): void {
  if (w.record !== null)
    w.record.points.push(w.state[X] as number, w.state[Y] as number, w.here[0] as number);
}

/** Marks points within the piece from `state` to `next` for drawing, every 0.15 m or so. */
export function recordPiece(w: ShotWork): void {
  if (w.record === null) return;
  const h = w.step[STEP_S] as number; // arrays of fixed size, set once in shotWork
  const s = w.state;
  const n = w.next;
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const parts = Math.ceil(Math.sqrt(dx * dx + dy * dy) / 0.15);
  for (let k = 1; k < parts; k += 1) {
    const u = k / parts;
    const px = hermite(s[X] as number, s[VX] as number, n[X] as number, n[VX] as number, h, u);
    const py = hermite(s[Y] as number, s[VY] as number, n[Y] as number, n[VY] as number, h, u);
    w.at[0] = px;
    w.at[1] = py;
    w.ground.sample(w.at, w.probe2);
    w.record.points.push(px, py, w.probe2[0] as number);
  }
}
