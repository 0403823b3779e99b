import { planePoint } from '../geometry/points.ts';
import type { PlanePoint, PlanePolygon, PlaneRing } from '../geometry/points.ts';
import type { Box, XY } from './view.ts';
import { boxContains } from './view.ts';

/**
 * A polygon in drawing units with what pattern drawing asks of it. `edges` holds x, y, x, y of each side in turn; reads
 * from it are cast because every index comes from its own length.
 */
export interface Shape {
  /** Outer ring first, then holes; closing points not repeated. */
  readonly rings: readonly (readonly XY[])[];
  readonly edges: Float64Array;
  readonly box: Box;
}

/** Corners sharper than this stay corners; gentler ones are drawn as the curve they were traced from. */
const cornerDeg = 68;

export function shapeOf(polygon: PlanePolygon, toDrawing: (p: PlanePoint) => XY): Shape {
  return shapeFromRings(polygon.map((ring) => smoothed(ring.map(toDrawing))).filter((r) => r.length >= 3));
}

export function shapeFromRings(rings: readonly (readonly XY[])[]): Shape {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  const edges = new Float64Array(count * 4);
  let at = 0;
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (const ring of rings) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      if (previous === undefined) break;
      edges[at] = previous[0];
      edges[at + 1] = previous[1];
      edges[at + 2] = point[0];
      edges[at + 3] = point[1];
      at += 4;
      previous = point;
      left = Math.min(left, point[0]);
      right = Math.max(right, point[0]);
      top = Math.min(top, point[1]);
      bottom = Math.max(bottom, point[1]);
    }
  }
  const box =
    count === 0
      ? { x: 0, y: 0, width: 0, height: 0 }
      : { x: left, y: top, width: right - left, height: bottom - top };
  return { rings, edges, box };
}

/**
 * A ring through the same points with its gentle bends rounded (cubic through four neighbours, Catmull-Rom), sampled
 * about every 4 units.
 */
export function smoothed(ring: readonly XY[]): readonly XY[] {
  const n = ring.length;
  if (n < 5) return ring;
  const point = (i: number): XY => ring[((i % n) + n) % n] as XY;
  const sharp = ring.map((_, i) => turnDeg(point(i - 1), point(i), point(i + 1)) > cornerDeg);
  const out: XY[] = [];
  for (let i = 0; i < n; i += 1) {
    const b = point(i);
    const c = point(i + 1);
    const a = sharp[i] === true ? b : point(i - 1);
    const d = sharp[(i + 1) % n] === true ? c : point(i + 2);
    const steps = Math.min(12, Math.max(1, Math.round(distance(b, c) / 4)));
    for (let k = 0; k < steps; k += 1) out.push(catmullRom(a, b, c, d, k / steps));
  }
  return out;
}

/** A ring of the plane rounded as its drawing is, so that what is cut to it meets the drawn edge. */
export function smoothedRing(ring: PlaneRing): PlaneRing {
  const unitsPerM = 12;
  return smoothed(ring.map((p): XY => [p.eastM * unitsPerM, p.northM * unitsPerM])).map(([x, y]) =>
    planePoint(x / unitsPerM, y / unitsPerM),
  );
}

export const distance = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function turnDeg(a: XY, b: XY, c: XY): number {
  const inX = b[0] - a[0];
  const inY = b[1] - a[1];
  const outX = c[0] - b[0];
  const outY = c[1] - b[1];
  return (Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY)) * 180) / Math.PI;
}

function catmullRom(a: XY, b: XY, c: XY, d: XY, t: number): XY {
  const at = (i: 0 | 1): number =>
    0.5 *
    (2 * b[i] +
      (c[i] - a[i]) * t +
      (2 * a[i] - 5 * b[i] + 4 * c[i] - d[i]) * t * t +
      (3 * b[i] - a[i] - 3 * c[i] + d[i]) * t * t * t);
  return [at(0), at(1)];
}

export function contains(shape: Shape, x: number, y: number): boolean {
  if (!boxContains(shape.box, [x, y])) return false;
  const { edges } = shape;
  let inside = false;
  for (let i = 0; i < edges.length; i += 4) {
    const ay = edges[i + 1] as number;
    const by = edges[i + 3] as number;
    if (ay > y === by > y) continue;
    const ax = edges[i] as number;
    if (x < ax + ((y - ay) / (by - ay)) * ((edges[i + 2] as number) - ax)) inside = !inside;
  }
  return inside;
}

/** Distance to the nearest side, whichever side of it the point is. */
export function distanceToEdge(shape: Shape, x: number, y: number): number {
  const { edges } = shape;
  let least = Infinity;
  for (let i = 0; i < edges.length; i += 4) least = Math.min(least, squareToSide(edges, i, x, y));
  return Math.sqrt(least);
}

/** Square of the distance to one side of a shape, by where the side begins in `edges`. */
export function squareToSide(edges: Float64Array, edge: number, x: number, y: number): number {
  const ax = edges[edge] as number;
  const ay = edges[edge + 1] as number;
  const dx = (edges[edge + 2] as number) - ax;
  const dy = (edges[edge + 3] as number) - ay;
  const lengthSquared = dx * dx + dy * dy;
  let t = lengthSquared === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / lengthSquared;
  t = t < 0 ? 0 : t > 1 ? 1 : t;
  const ex = ax + t * dx - x;
  const ey = ay + t * dy - y;
  return ex * ex + ey * ey;
}

/** Distance along a ray to the first side it meets, or Infinity. */
export function rayHit(shape: Shape, [x, y]: XY, dx: number, dy: number): number {
  const { edges } = shape;
  let least = Infinity;
  for (let i = 0; i < edges.length; i += 4) {
    const ax = (edges[i] as number) - x;
    const ay = (edges[i + 1] as number) - y;
    const ex = (edges[i + 2] as number) - x - ax;
    const ey = (edges[i + 3] as number) - y - ay;
    const det = dx * ey - dy * ex;
    if (det === 0) continue;
    const along = (ax * ey - ay * ex) / det;
    const side = (ax * dy - ay * dx) / det;
    if (along > 1e-6 && along < least && side >= 0 && side <= 1) least = along;
  }
  return least;
}

/** Pairs of x where the line at height y is inside, in order. */
export function spansAt(shape: Shape, y: number): number[] {
  const { edges } = shape;
  const crossings: number[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const ay = edges[i + 1] as number;
    const by = edges[i + 3] as number;
    if (ay > y === by > y) continue;
    const ax = edges[i] as number;
    crossings.push(ax + ((y - ay) / (by - ay)) * ((edges[i + 2] as number) - ax));
  }
  return crossings.sort((a, b) => a - b);
}

/** The shape turned about the origin by an angle in radians, clockwise on the drawing. */
export function turnedShape(shape: Shape, angle: number): Shape {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return shapeFromRings(
    shape.rings.map((ring) => ring.map(([x, y]): XY => [x * cos - y * sin, x * sin + y * cos])),
  );
}

/** The deepest point found on a small search grid, clear of what covers the shape: where a name sits best. */
export function deepestPoint(
  shape: Shape,
  within: Box,
  above: readonly Shape[],
): { readonly at: XY; readonly depth: number } | null {
  const left = Math.max(shape.box.x, within.x);
  const top = Math.max(shape.box.y, within.y);
  const right = Math.min(shape.box.x + shape.box.width, within.x + within.width);
  const bottom = Math.min(shape.box.y + shape.box.height, within.y + within.height);
  let best: { at: XY; depth: number } | null = null;
  const steps = 14;
  for (let i = 1; i < steps; i += 1) {
    for (let j = 1; j < steps; j += 1) {
      const x = left + ((right - left) * i) / steps;
      const y = top + ((bottom - top) * j) / steps;
      if (!contains(shape, x, y)) continue;
      if (above.some((other) => contains(other, x, y))) continue;
      const depth = Math.min(
        distanceToEdge(shape, x, y),
        ...above.map((other) => distanceToEdge(other, x, y)),
        x - left,
        right - x,
        (y - top) * 1.5,
        (bottom - y) * 1.5,
      );
      if (best === null || depth > best.depth) best = { at: [x, y], depth };
    }
  }
  return best;
}

/** Points every `step` units round a ring with the unit tangent there. */
export function walk(ring: readonly XY[], step: number): { readonly at: XY; readonly tangent: XY }[] {
  const first = ring[0];
  if (first === undefined) return [];
  const closed = [...ring, first];
  const total = closed.reduce((sum, p, i) => sum + (i === 0 ? 0 : distance(closed[i - 1] as XY, p)), 0);
  if (!(total > 0)) return [];
  const even = total / Math.max(3, Math.round(total / step));
  const out: { at: XY; tangent: XY }[] = [];
  let next = even / 2;
  let travelled = 0;
  for (let i = 1; i < closed.length; i += 1) {
    const a = closed[i - 1] as XY;
    const b = closed[i] as XY;
    const length = distance(a, b);
    if (length === 0) continue;
    const tangent: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    while (next <= travelled + length) {
      const along = next - travelled;
      out.push({ at: [a[0] + tangent[0] * along, a[1] + tangent[1] * along], tangent });
      next += even;
    }
    travelled += length;
  }
  return out;
}

/** Twice the signed area; the sign tells which way the ring runs on the drawing. */
export function signedArea(ring: readonly XY[]): number {
  let sum = 0;
  let previous = ring[ring.length - 1];
  for (const point of ring) {
    if (previous !== undefined) sum += previous[0] * point[1] - point[0] * previous[1];
    previous = point;
  }
  return sum;
}
