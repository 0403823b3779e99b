import type { PlanePolygon } from './points.ts';
import { differenceOf, grown } from './topology.ts';

/**
 * The band of a stated width along the outside of a polygon's outer edge, as a polygon with the shape itself for a hole.
 * Null where none can be made.
 */
export function collarOf(polygon: PlanePolygon, widthM: number): PlanePolygon | null {
  const outer = polygon[0];
  if (outer === undefined || !(widthM > 0)) return null;
  const whole = grown([outer], widthM)[0]?.[0];
  return whole === undefined ? null : (differenceOf([whole], [outer])[0] ?? null);
}
