/**
 * Where a ball rolling on a plane stops, from where it is, into out[0..1]: exact, and without a power or an angle.
 * With c and q the cosine and sine of its heading against the fall line, pull s and resistance a > s:
 * down the fall line v^2/8 [(1+c)^2/(a-s) - (1-c)^2/(a+s)], across it v^2 q/2 [(1+c)/(2a-s) + (1-c)/(2a+s)].
 * (Elimination of time from dv/dt = -a + s c, v dphi/dt = -s q; integrals of powers of tan(phi/2).)
 */
export function stopDisplacement(
  vx: number,
  vy: number,
  speed: number,
  gx: number,
  gy: number,
  s: number,
  a: number,
  out: Float64Array,
): void {
  if (s < 1e-9) {
    out[0] = (vx * speed) / (2 * a);
    out[1] = (vy * speed) / (2 * a);
    return;
  }
  const fx = -gx / s;
  const fy = -gy / s;
  const c = (vx * fx + vy * fy) / speed;
  const q = (vy * fx - vx * fy) / speed;
  const v2 = speed * speed;
  const down = (v2 / 8) * (((1 + c) * (1 + c)) / (a - s) - ((1 - c) * (1 - c)) / (a + s));
  const across = ((v2 * q) / 2) * ((1 + c) / (2 * a - s) + (1 - c) / (2 * a + s));
  out[0] = down * fx - across * fy;
  out[1] = down * fy + across * fx;
}

/** Time that a ball takes over its last piece of way. */
export const stopTime = (speed: number, dx: number, dy: number): number =>
  (2 * Math.sqrt(dx * dx + dy * dy)) / Math.max(speed, 1e-9);
