import type { PlanePolygon, PlaneRing } from '../geometry/points.ts';

/** A polygon as flat rings of east, north pairs (not closed), for loops that must not allocate. */
export type FlatPolygon = readonly Float64Array[];

export function flatRing(ring: PlaneRing): Float64Array {
  const flat = new Float64Array(ring.length * 2);
  ring.forEach((point, i) => {
    flat[2 * i] = point.eastM;
    flat[2 * i + 1] = point.northM;
  });
  return flat;
}

export const flatPolygon = (polygon: PlanePolygon): FlatPolygon => polygon.map(flatRing);

/** Whether a point lies in a polygon, by the even-odd rule. */
export function insidePolygon(polygon: FlatPolygon, eastM: number, northM: number): boolean {
  let inside = false;
  for (const ring of polygon) {
    let j = ring.length - 2;
    for (let i = 0; i < ring.length; i += 2) {
      const yi = ring[i + 1] as number;
      const yj = ring[j + 1] as number;
      if (yi > northM !== yj > northM) {
        const xi = ring[i] as number;
        const xj = ring[j] as number;
        if (eastM < xi + ((northM - yi) / (yj - yi)) * (xj - xi)) inside = !inside;
      }
      j = i;
    }
  }
  return inside;
}

/**
 * Distance to a polygon's edge, positive inside, with the unit vector in which it grows written to out[0..1]. On the edge
 * itself, and for an empty polygon (-Infinity), that vector is 0.
 */
export function edgeDistance(
  polygon: FlatPolygon,
  eastM: number,
  northM: number,
  out?: Float64Array,
): number {
  let best = Infinity;
  let bestX = 0;
  let bestY = 0;
  for (const ring of polygon) {
    let j = ring.length - 2;
    for (let i = 0; i < ring.length; i += 2) {
      const ax = ring[j] as number;
      const ay = ring[j + 1] as number;
      const ux = (ring[i] as number) - ax;
      const uy = (ring[i + 1] as number) - ay;
      const px = eastM - ax;
      const py = northM - ay;
      const length2 = ux * ux + uy * uy;
      const t = length2 > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy) / length2)) : 0;
      const dx = px - t * ux;
      const dy = py - t * uy;
      const d2 = dx * dx + dy * dy;
      if (d2 < best) {
        best = d2;
        bestX = dx;
        bestY = dy;
      }
      j = i;
    }
  }
  const sign = insidePolygon(polygon, eastM, northM) ? 1 : -1;
  const distance = Math.sqrt(best);
  if (out !== undefined) {
    out[0] = distance > 0 && best < Infinity ? (sign * bestX) / distance : 0;
    out[1] = distance > 0 && best < Infinity ? (sign * bestY) / distance : 0;
  }
  return sign * distance;
}
