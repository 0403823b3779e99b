import type { Obstacle } from './ground.ts';

/** Whether a point lies inside a flat ring, by counting crossings. */
export function insideRing(ring: Float64Array, x: number, y: number): boolean {
  let inside = false;
  const size = ring.length;
  let ax = ring[size - 2] as number; // rings have at least three points
  let ay = ring[size - 1] as number;
  for (let i = 0; i < size; i += 2) {
    const bx = ring[i] as number;
    const by = ring[i + 1] as number;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside;
}

/** Unit normal of the side of the ring last met by `sideShare`. */
export const side = new Float64Array(2);

/** Share of the way from (x0, y0) to (x1, y1) at which it first meets a side of the ring; 2 if it meets none. */
export function sideShare(ring: Float64Array, x0: number, y0: number, x1: number, y1: number): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const size = ring.length;
  let least = 2;
  let ax = ring[size - 2] as number;
  let ay = ring[size - 1] as number;
  for (let i = 0; i < size; i += 2) {
    const bx = ring[i] as number;
    const by = ring[i + 1] as number;
    const ex = bx - ax;
    const ey = by - ay;
    const det = dx * ey - dy * ex;
    if (det !== 0) {
      const u = ((ax - x0) * ey - (ay - y0) * ex) / det;
      const v = ((ax - x0) * dy - (ay - y0) * dx) / det;
      if (u >= 0 && u < least && u <= 1 && v >= 0 && v <= 1) {
        least = u;
        const length = Math.sqrt(ex * ex + ey * ey);
        side[0] = -ey / length;
        side[1] = ex / length;
      }
    }
    ax = bx;
    ay = by;
  }
  return least;
}

/**
 * Length of a straight way inside an upright prism, from a point on or in it along a direction (any length), metres: what
 * it crosses up to the first side or the top or bottom that it leaves by.
 */
export function wayInside(
  { ringM, bottomM, topM }: Obstacle,
  x: number,
  y: number,
  z: number,
  vx: number,
  vy: number,
  vz: number,
): number {
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  if (speed === 0) return 0;
  // Way in seconds at this speed; the vertical first.
  let out = vz > 0 ? (topM - z) / vz : vz < 0 ? (bottomM - z) / vz : Infinity;
  const size = ringM.length;
  let ax = ringM[size - 2] as number;
  let ay = ringM[size - 1] as number;
  for (let i = 0; i < size; i += 2) {
    const bx = ringM[i] as number;
    const by = ringM[i + 1] as number;
    const ex = bx - ax;
    const ey = by - ay;
    const det = vx * ey - vy * ex;
    if (det !== 0) {
      const t = ((ax - x) * ey - (ay - y) * ex) / det;
      const u = ((ax - x) * vy - (ay - y) * vx) / det;
      if (t > 1e-9 && t < out && u >= 0 && u <= 1) out = t;
    }
    ax = bx;
    ay = by;
  }
  return out < Infinity ? Math.max(0, out) * speed : 0;
}
