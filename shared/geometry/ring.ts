import { length2 } from '../numeric/elementary.ts';
import { planePoint, type PlanePoint, type PlanePolygon, type PlaneRing } from './points.ts';

/** Plane geometry of rings and polylines, metres. A ring's first point is not repeated. */

/** Twice is halved last: the signed area, positive for a counter-clockwise ring. */
export function signedAreaM2(ring: PlaneRing): number {
  const origin = ring[0];
  let before = ring[ring.length - 1];
  if (origin === undefined || before === undefined) return 0;
  let twice = 0;
  for (const point of ring) {
    twice +=
      (before.eastM - origin.eastM) * (point.northM - origin.northM) -
      (point.eastM - origin.eastM) * (before.northM - origin.northM);
    before = point;
  }
  return twice / 2;
}

/** Area of the outer ring less its holes, whatever way they wind. */
export function polygonAreaM2(polygon: PlanePolygon): number {
  return polygon.reduce((sum, ring, i) => {
    const area = Math.abs(signedAreaM2(ring));
    return i === 0 ? area : sum - area;
  }, 0);
}

export function distanceM(a: PlanePoint, b: PlanePoint): number {
  return length2(a.eastM - b.eastM, a.northM - b.northM);
}

export function lineLengthM(points: readonly PlanePoint[]): number {
  let length = 0;
  let before = points[0];
  for (const point of points) {
    if (before !== undefined) length += distanceM(before, point);
    before = point;
  }
  return length;
}

export function perimeterM(ring: PlaneRing): number {
  const first = ring[0];
  return first === undefined ? 0 : lineLengthM([...ring, first]);
}

/** Counter-clockwise outer ring and clockwise holes, as `PlanePolygon` wants them. */
export function woundPolygon(polygon: PlanePolygon): PlanePolygon {
  return polygon.map((ring, i) => (signedAreaM2(ring) > 0 === (i === 0) ? ring : ring.toReversed()));
}

/** Area-weighted centre of a ring; the plain mean of its points where the ring has no area. */
export function centroid(ring: PlaneRing): PlanePoint {
  const origin = ring[0];
  let before = ring[ring.length - 1];
  if (origin === undefined || before === undefined)
    throw new RangeError('a ring without points has no centre');
  let twice = 0;
  let east = 0;
  let north = 0;
  for (const point of ring) {
    const ax = before.eastM - origin.eastM;
    const ay = before.northM - origin.northM;
    const bx = point.eastM - origin.eastM;
    const by = point.northM - origin.northM;
    const cross = ax * by - bx * ay;
    twice += cross;
    east += (ax + bx) * cross;
    north += (ay + by) * cross;
    before = point;
  }
  if (Math.abs(twice) < 1e-9) {
    const count = ring.length;
    return planePoint(
      ring.reduce((sum, p) => sum + p.eastM, 0) / count,
      ring.reduce((sum, p) => sum + p.northM, 0) / count,
    );
  }
  return planePoint(origin.eastM + east / (3 * twice), origin.northM + north / (3 * twice));
}

/** Even-odd rule; a point exactly on the edge may fall either way. */
export function pointInRing(point: PlanePoint, ring: PlaneRing): boolean {
  let inside = false;
  let before = ring[ring.length - 1];
  for (const at of ring) {
    if (
      before !== undefined &&
      at.northM > point.northM !== before.northM > point.northM &&
      point.eastM <
        ((before.eastM - at.eastM) * (point.northM - at.northM)) / (before.northM - at.northM) + at.eastM
    )
      inside = !inside;
    before = at;
  }
  return inside;
}

/** Inside the outer ring and outside its holes. */
export function pointInPolygon(point: PlanePoint, polygon: PlanePolygon): boolean {
  return polygon.every((ring, i) => pointInRing(point, ring) === (i === 0)) && polygon.length > 0;
}

export interface Nearest {
  readonly distanceM: number;
  readonly at: PlanePoint;
  /** Index of the first point of the segment it lies on. */
  readonly segment: number;
}

/** The nearest place on a polyline; on a ring when `closed`. */
export function nearestOnLine(point: PlanePoint, line: readonly PlanePoint[], closed = false): Nearest {
  const first = line[0];
  if (first === undefined) throw new RangeError('a line without points has no nearest place');
  let best: Nearest = { distanceM: distanceM(point, first), at: first, segment: 0 };
  const segments = closed ? line.length : line.length - 1;
  for (let i = 0; i < segments; i += 1) {
    const a = line[i] ?? first;
    const b = line[i + 1] ?? first;
    const dx = b.eastM - a.eastM;
    const dy = b.northM - a.northM;
    const square = dx * dx + dy * dy;
    const along = (point.eastM - a.eastM) * dx + (point.northM - a.northM) * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;
    const at = planePoint(a.eastM + t * dx, a.northM + t * dy);
    const distance = distanceM(point, at);
    if (distance < best.distanceM) best = { distanceM: distance, at, segment: i };
  }
  return best;
}

export function nearestOnRing(point: PlanePoint, ring: PlaneRing): Nearest {
  return nearestOnLine(point, ring, true);
}

/** Distance to the nearest edge of any ring, positive inside the polygon and negative outside. */
export function insideDistanceM(point: PlanePoint, polygon: PlanePolygon): number {
  const distance = polygon.reduce(
    (least, ring) => Math.min(least, nearestOnRing(point, ring).distanceM),
    Infinity,
  );
  return pointInPolygon(point, polygon) ? distance : -distance;
}

export interface Box {
  readonly westM: number;
  readonly southM: number;
  readonly eastM: number;
  readonly northM: number;
}

/** The box around points; null for none. */
export function boundingBox(points: Iterable<PlanePoint>): Box | null {
  let westM = Infinity;
  let southM = Infinity;
  let eastM = -Infinity;
  let northM = -Infinity;
  for (const point of points) {
    westM = Math.min(westM, point.eastM);
    southM = Math.min(southM, point.northM);
    eastM = Math.max(eastM, point.eastM);
    northM = Math.max(northM, point.northM);
  }
  return westM <= eastM ? { westM, southM, eastM, northM } : null;
}
