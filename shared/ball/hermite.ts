/**
 * Cubic through both ends of a step of `h` seconds with their velocities, for one coordinate: where it is at share `u` of
 * the step.
 */
export function hermite(a: number, va: number, b: number, vb: number, h: number, u: number): number {
  const d = b - a;
  return a + u * (d + (1 - u) * ((h * va - d) * (1 - u) + (d - h * vb) * u));
}

/** Velocity on the same cubic. */
export function hermiteSlope(a: number, va: number, b: number, vb: number, h: number, u: number): number {
  return va + u * (vb - va) + 3 * u * (1 - u) * ((2 * (b - a)) / h - va - vb);
}
