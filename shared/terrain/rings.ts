import type { PlanePoint, PlanePolygon, PlaneRing } from '../geometry/points.ts';

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

/** Mean of a ring's area: its centre of gravity; the mean of its points where it has no area. */
export function ringCentre(ring: PlaneRing): PlanePoint {
  let area = 0;
  let east = 0;
  let north = 0;
  let sumEast = 0;
  let sumNorth = 0;
  const first = ring[0] ?? { eastM: 0, northM: 0 };
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    // From the first point, so that far coordinates lose nothing.
    const ax = a.eastM - first.eastM;
    const ay = a.northM - first.northM;
    const bx = b.eastM - first.eastM;
    const by = b.northM - first.northM;
    const cross = ax * by - bx * ay;
    area += cross;
    east += (ax + bx) * cross;
    north += (ay + by) * cross;
    sumEast += ax;
    sumNorth += ay;
  });
  const count = Math.max(1, ring.length);
  return Math.abs(area) > 1e-12
    ? { eastM: first.eastM + east / (3 * area), northM: first.northM + north / (3 * area) }
    : { eastM: first.eastM + sumEast / count, northM: first.northM + sumNorth / count };
}
