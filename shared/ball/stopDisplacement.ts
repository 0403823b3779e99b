/** Slots of what `stopDisplacement` is asked, then of what it answers. */
export const STOP_VX = 0;
export const STOP_VY = 1;
/** Pull of the slope, m/s^2, pointing up it. */
export const STOP_PULL_X = 2;
export const STOP_PULL_Y = 3;
/** Resistance, m/s^2, greater than the pull. */
export const STOP_RESISTANCE = 4;
/** Where it stops, from where it is, m. */
export const STOP_DX = 5;
export const STOP_DY = 6;
export const STOP_SIZE = 7;

/**
 * Where a ball rolling on a plane stops, from where it is: exact, and without a power or an angle. Asked and answered in
 * one array (`STOP_VX` and so on), because engines wrap every number that is passed to a call.
 * With c and q the cosine and sine of its heading against the fall line, pull s and resistance a > s:
 * down the fall line v^2/8 [(1+c)^2/(a-s) - (1-c)^2/(a+s)], across it v^2 q/2 [(1+c)/(2a-s) + (1-c)/(2a+s)].
 * (Elimination of time from dv/dt = -a + s c, v dphi/dt = -s q; integrals of powers of tan(phi/2).)
 */
export function stopDisplacement(stop: Float64Array): void {
  const vx = stop[STOP_VX] as number; // the array has its seven entries
  const vy = stop[STOP_VY] as number;
  const gx = stop[STOP_PULL_X] as number;
  const gy = stop[STOP_PULL_Y] as number;
  const a = stop[STOP_RESISTANCE] as number;
  const speed = Math.sqrt(vx * vx + vy * vy);
  const s = Math.sqrt(gx * gx + gy * gy);
  if (s < 1e-9) {
    stop[STOP_DX] = (vx * speed) / (2 * a);
    stop[STOP_DY] = (vy * speed) / (2 * a);
    return;
  }
  const fx = -gx / s;
  const fy = -gy / s;
  const c = (vx * fx + vy * fy) / speed;
  const q = (vy * fx - vx * fy) / speed;
  const v2 = speed * speed;
  const down = (v2 / 8) * (((1 + c) * (1 + c)) / (a - s) - ((1 - c) * (1 - c)) / (a + s));
  const across = ((v2 * q) / 2) * ((1 + c) / (2 * a - s) + (1 - c) / (2 * a + s));
  stop[STOP_DX] = down * fx - across * fy;
  stop[STOP_DY] = down * fy + across * fx;
}

/** Time that a ball takes over its last piece of way. */
export const stopTime = (speed: number, dx: number, dy: number): number =>
  (2 * Math.sqrt(dx * dx + dy * dy)) / Math.max(speed, 1e-9);
