import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingDeg, pointAlong } from '../../../shared/geometry/bearing.ts';
import { planePoint as p, type PlaneRing } from '../../../shared/geometry/points.ts';
import {
  boundingBox,
  centroid,
  distanceM,
  insideDistanceM,
  lineLengthM,
  nearestOnRing,
  perimeterM,
  pointInPolygon,
  polygonAreaM2,
  signedAreaM2,
  woundPolygon,
} from '../../../shared/geometry/ring.ts';
import { selfIntersection } from '../../../shared/geometry/selfIntersection.ts';
import { differenceOf, grown, overlapOf, unionOf, untangled } from '../../../shared/geometry/topology.ts';

const square: PlaneRing = [p(0, 0), p(10, 0), p(10, 10), p(0, 10)];
const hole: PlaneRing = [p(4, 4), p(6, 4), p(6, 6), p(4, 6)];
const away = (ring: PlaneRing, eastM: number, northM = 0): PlaneRing =>
  ring.map((q) => p(q.eastM + eastM, q.northM + northM));

/** Star-shaped rings about the origin: never crossing, wound counter-clockwise. */
const stars = fc
  .array(fc.double({ min: 0.5, max: 20, noNaN: true }), { minLength: 3, maxLength: 40 })
  .map((radii) => radii.map((r, i) => pointAlong(p(0, 0), (-360 * i) / radii.length, r)));

describe('rings', () => {
  it('measures a square with a hole', () => {
    expect(signedAreaM2(square)).toBe(100);
    expect(polygonAreaM2([square, hole])).toBe(96);
    expect(perimeterM(square)).toBe(40);
    expect(lineLengthM(square)).toBe(30);
    expect(centroid(square)).toEqual(p(5, 5));
    expect(boundingBox(square)).toEqual({ westM: 0, southM: 0, eastM: 10, northM: 10 });
    expect(boundingBox([])).toBeNull();
    expect(pointInPolygon(p(5, 5), [square, hole])).toBe(false);
    expect(pointInPolygon(p(2, 5), [square, hole])).toBe(true);
    expect(insideDistanceM(p(2.5, 5), [square, hole])).toBe(1.5);
    expect(insideDistanceM(p(-3, 5), [square, hole])).toBe(-3);
    expect(nearestOnRing(p(5, -2), square)).toEqual({ distanceM: 2, at: p(5, 0), segment: 0 });
    expect(woundPolygon([square.toReversed(), hole])).toEqual([square, hole.toReversed()]);
    expect(bearingDeg(p(1, 1), p(0, 1))).toBe(270);
  });

  it('keeps its area through shifts of origin, turns of the first corner and scale', () => {
    fc.assert(
      fc.property(stars, fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.nat(40), (ring, shift, turn) => {
        const area = signedAreaM2(ring);
        expect(area).toBeGreaterThan(0);
        const moved = away(ring, shift, -shift);
        expect(signedAreaM2(moved)).toBeCloseTo(area, 6);
        const k = turn % ring.length;
        expect(signedAreaM2([...ring.slice(k), ...ring.slice(0, k)])).toBeCloseTo(area, 9);
        expect(signedAreaM2(ring.map((q) => p(q.eastM * 1e-6, q.northM * 1e-6))) * 1e12).toBeCloseTo(area, 6);
        expect(signedAreaM2(ring.toReversed())).toBeCloseTo(-area, 9);
      }),
      { seed: 11 },
    );
  });

  it('finds where an outline crosses itself, and nothing in one that does not', () => {
    expect(selfIntersection([p(0, 0), p(4, 4), p(4, 0), p(0, 4)])).toEqual({ segments: [0, 2], at: p(2, 2) });
    expect(selfIntersection([p(0, 0), p(4, 0), p(2, 0), p(2, 3)])?.segments).toEqual([0, 1]);
    expect(selfIntersection([p(0, 0), p(4, 0), p(4, 4), p(2, 0), p(0, 4)])?.at).toEqual(p(2, 0));
    fc.assert(
      fc.property(stars, (ring) => {
        expect(selfIntersection(ring)).toBeNull();
      }),
      { seed: 12 },
    );
  });

  it('agrees with trying every pair of sides', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }));
    fc.assert(
      fc.property(fc.uniqueArray(corner, { minLength: 4, maxLength: 9, selector: String }), (corners) => {
        const ring = corners.map(([x, y]) => p(x, y));
        expect(selfIntersection(ring) !== null).toBe(crossesByPairs(ring));
      }),
      { seed: 13, numRuns: 400 },
    );
  });
});

/** In whole numbers, so exactly: any two sides that share more than the corner between them. */
function crossesByPairs(ring: PlaneRing): boolean {
  const n = ring.length;
  const at = (i: number) => ring[i % n] ?? p(0, 0);
  const side = (a: (typeof square)[number], b: (typeof square)[number], c: (typeof square)[number]) =>
    Math.sign((b.eastM - a.eastM) * (c.northM - a.northM) - (c.eastM - a.eastM) * (b.northM - a.northM));
  const on = (a: (typeof square)[number], b: (typeof square)[number], c: (typeof square)[number]) =>
    side(a, b, c) === 0 && distanceM(a, c) + distanceM(c, b) <= distanceM(a, b) + 1e-9;
  for (let i = 0; i < n; i += 1)
    for (let j = i + 1; j < n; j += 1) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (j === i + 1) {
        if (on(a, b, d) || on(c, d, a)) return true;
      } else if (i === 0 && j === n - 1) {
        if (on(c, d, b) || on(a, b, c)) return true;
      } else if (on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)) return true;
      else if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) return true;
    }
  return false;
}

describe('set operations', () => {
  const area = (polygons: readonly (readonly PlaneRing[])[]): number =>
    polygons.reduce((sum, polygon) => sum + polygonAreaM2(polygon), 0);

  it('joins, cuts and overlaps', () => {
    const other = away(square, 5);
    expect(area(unionOf([[square], [other]]))).toBeCloseTo(150, 9);
    expect(area(overlapOf([square], [other]))).toBeCloseTo(50, 9);
    expect(area(differenceOf([square], [other]))).toBeCloseTo(50, 9);
    expect(overlapOf([square], [away(square, 20)])).toEqual([]);
    expect(signedAreaM2(unionOf([[square.toReversed()], [other]])[0]?.[0] ?? [])).toBeGreaterThan(0);
  });

  it('grows a square by a yard to within a millimetre of the rounded square', () => {
    const by = 0.9144;
    const [outer = []] = grown([away(square, 300, 200)], by)[0] ?? [];
    // Corners are sixteen chords to a quarter turn.
    const corners = 32 * by * by * Math.sin(Math.PI / 32);
    expect(signedAreaM2(outer)).toBeCloseTo(100 + 40 * by + corners, 1);
    for (const point of outer)
      expect(Math.abs(nearestOnRing(point, away(square, 300, 200)).distanceM - by)).toBeLessThan(2e-3);
  });

  it('untangles a bow tie into its two halves', () => {
    expect(untangled([p(0, 0), p(4, 4), p(4, 0), p(0, 4)]).map((part) => polygonAreaM2(part))).toEqual([
      4, 4,
    ]);
  });
});
