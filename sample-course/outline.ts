import { pointAlong, bearingDeg } from '../shared/geometry/bearing.ts';
import { planePoint, type PlanePoint, type PlaneRing } from '../shared/geometry/points.ts';

/** Waves laid round an outline: how many, how high as a share of the radius, and where the first crest lies. */
export interface Wave {
  readonly count: number;
  readonly share: number;
  readonly crestDeg: number;
}

/** A smooth outline that every ray from its middle meets once. Bearings run clockwise from the direction of play. */
export interface Blob {
  readonly middle: PlanePoint;
  readonly halfWidthM: number;
  readonly halfLengthM: number;
  readonly turnDeg: number;
  readonly waves: readonly Wave[];
}

const RAD = Math.PI / 180;

export function radiusM(blob: Blob, bearing: number): number {
  const own = (bearing - blob.turnDeg) * RAD;
  const ellipse = 1 / Math.hypot(Math.sin(own) / blob.halfWidthM, Math.cos(own) / blob.halfLengthM);
  const waves = blob.waves.reduce(
    (sum, { count, share, crestDeg }) =>
      sum + share * Math.cos(count * (bearing - blob.turnDeg - crestDeg) * RAD),
    1,
  );
  return ellipse * waves;
}

/** The point a distance beyond the edge on a bearing from the middle; negative is inside. */
export function beyondEdge(blob: Blob, bearing: number, beyondM: number): PlanePoint {
  return pointAlong(blob.middle, bearing, radiusM(blob, bearing) + beyondM);
}

/** How far a point lies beyond the edge along its ray from the middle, and on which bearing. */
export function rayFrom(blob: Blob, point: PlanePoint): { bearing: number; beyondM: number } {
  const bearing = bearingDeg(blob.middle, point);
  const out = Math.hypot(point.eastM - blob.middle.eastM, point.northM - blob.middle.northM);
  return { bearing, beyondM: out - radiusM(blob, bearing) };
}

export function blobRing(blob: Blob, corners: number, beyondM = 0): PlaneRing {
  return Array.from({ length: corners }, (_, i) => beyondEdge(blob, (-360 * i) / corners, beyondM));
}

/** Closed Catmull-Rom spline through the knots, each span cut into equal steps (Catmull & Rom 1974; from memory). */
export function smoothRing(knots: readonly PlanePoint[], stepsPerSpan: number): PlaneRing {
  const at = (i: number): PlanePoint => knots[(i + knots.length) % knots.length] ?? planePoint(0, 0);
  return knots.flatMap((_, i) =>
    Array.from({ length: stepsPerSpan }, (__, s) =>
      span(at(i - 1), at(i), at(i + 1), at(i + 2), s / stepsPerSpan),
    ),
  );
}

/** The same for an open line, which ends on its last knot. */
export function smoothLine(knots: readonly PlanePoint[], stepsPerSpan: number): readonly PlanePoint[] {
  const at = (i: number): PlanePoint => knots[Math.min(knots.length - 1, Math.max(0, i))] ?? planePoint(0, 0);
  const points = knots
    .slice(1)
    .flatMap((_, i) =>
      Array.from({ length: stepsPerSpan }, (__, s) =>
        span(at(i - 1), at(i), at(i + 1), at(i + 2), s / stepsPerSpan),
      ),
    );
  return [...points, at(knots.length - 1)];
}

function span(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint, t: number): PlanePoint {
  const mix = (p: number, q: number, r: number, s: number): number =>
    q + (t / 2) * (r - p + t * (2 * p - 5 * q + 4 * r - s + t * (3 * (q - r) + s - p)));
  return planePoint(mix(a.eastM, b.eastM, c.eastM, d.eastM), mix(a.northM, b.northM, c.northM, d.northM));
}

/** A band of even width along a line. */
export function band(line: readonly PlanePoint[], widthM: number): PlaneRing {
  const side = (offsetM: number): PlanePoint[] =>
    line.map((point, i) => {
      const before = line[Math.max(0, i - 1)] ?? point;
      const after = line[Math.min(line.length - 1, i + 1)] ?? point;
      return pointAlong(point, bearingDeg(before, after) + 90, offsetM);
    });
  return [...side(widthM / 2), ...side(-widthM / 2).reverse()];
}
