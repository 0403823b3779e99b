import type { PlanePoint, PlanePolygon, PlaneRing } from './points.ts';
import { planePoint } from './points.ts';
import { distanceM } from './ring.ts';
import { differenceOf, grown } from './topology.ts';

/**
 * The band of a stated width along the outside of a polygon's outer edge, as a polygon with the shape itself for a hole.
 * Null where none can be made.
 */
export function collarOf(polygon: PlanePolygon, widthM: number): PlanePolygon | null {
  const outer = polygon[0];
  if (outer === undefined || !(widthM > 0)) return null;
  const whole = grown([outer], widthM)[0]?.[0];
  if (whole === undefined) return null;
  return differenceOf([withCorners(whole, SHORT * widthM)], [outer])[0] ?? null;
}

/** Sides of the rounding of a corner, as a share of the width: a sixteenth of a quarter turn is a tenth of it. */
const SHORT = 0.15;
/** Turned by less than this, sides meet in a point at most 4 % further out than the width. */
const GENTLE = Math.cos((32 * Math.PI) / 180);

/**
 * Where a gentle bend was rounded, one corner in place of the handful of points that would all have to be moved to change
 * it: the outer edge has the corners of the inner one, and is drawn as the same curve.
 */
function withCorners(ring: PlaneRing, shortM: number): PlaneRing {
  const n = ring.length;
  const at = (i: number): PlanePoint => ring[((i % n) + n) % n] as PlanePoint; // within the ring by its modulus
  const isShort = (i: number): boolean => distanceM(at(i), at(i + 1)) < shortM;
  let start = 0;
  while (start < n && isShort(start - 1)) start += 1;
  if (start === n) return ring;
  const made: PlanePoint[] = [];
  for (let i = start; i < start + n;) {
    let end = i;
    while (end < start + n - 1 && isShort(end)) end += 1;
    const corner = end === i ? null : meeting(at(i - 1), at(i), at(end), at(end + 1));
    if (corner === null) for (let k = i; k <= end; k += 1) made.push(at(k));
    else made.push(corner);
    i = end + 1;
  }
  return made;
}

/** Where a side from `a` to `b` meets one from `c` to `d`, both drawn on; null where the turn between them is sharp or none. */
function meeting(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): PlanePoint | null {
  const [ux, uy] = [b.eastM - a.eastM, b.northM - a.northM];
  const [vx, vy] = [d.eastM - c.eastM, d.northM - c.northM];
  const cross = ux * vy - uy * vx;
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
  if (!(size > 0) || (ux * vx + uy * vy) / size < GENTLE || Math.abs(cross) / size < 1e-6) return null;
  const t = ((c.eastM - b.eastM) * vy - (c.northM - b.northM) * vx) / cross;
  return t < 0 ? null : planePoint(b.eastM + t * ux, b.northM + t * uy);
}
