import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { bearingDeg, pointAlong } from '../../../shared/geometry/bearing.ts';
import { collarOf } from '../../../shared/geometry/collar.ts';
import { planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { distanceM, nearestOnLine, polygonAreaM2 } from '../../../shared/geometry/ring.ts';
import { simplifiedLine, simplifiedRing } from '../../../shared/geometry/simplify.ts';
import { snapped } from '../../../shared/geometry/snap.ts';
import { splitPolygon } from '../../../shared/geometry/split.ts';
import { circle, turnedAbout } from '../../../shared/geometry/turn.ts';

const square = (side: number, east = 0, north = 0): readonly PlanePoint[] => [
  planePoint(east, north),
  planePoint(east + side, north),
  planePoint(east + side, north + side),
  planePoint(east, north + side),
];

it('thins a stroke within its tolerance and keeps its ends', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          eastM: fc.double({ min: -50, max: 50, noNaN: true }),
          northM: fc.double({ min: -50, max: 50, noNaN: true }),
        }),
        {
          minLength: 2,
          maxLength: 80,
        },
      ),
      fc.double({ min: 0.01, max: 2, noNaN: true }),
      (stroke, toleranceM) => {
        const kept = simplifiedLine(stroke, toleranceM);
        expect(kept[0]).toEqual(stroke[0]);
        expect(kept.at(-1)).toEqual(stroke.at(-1));
        for (const point of stroke)
          expect(nearestOnLine(point, kept).distanceM).toBeLessThanOrEqual(toleranceM + 1e-9);
      },
    ),
    { numRuns: 60 },
  );
});

it('thins a round stroke to few corners of nearly its area', () => {
  const drawn = circle(planePoint(3, 4), 12, 240);
  const kept = simplifiedRing(drawn, 0.1);
  expect(kept.length).toBeLessThan(40);
  expect(polygonAreaM2([kept]) / polygonAreaM2([drawn])).toBeCloseTo(1, 1);
});

it('snaps to a corner before an edge, and to nothing out of reach', () => {
  const lines = [{ points: square(10), closed: true }];
  expect(snapped(planePoint(10.3, 9.8), lines, 0.5)).toEqual({ at: planePoint(10, 10), on: 'corner' });
  expect(snapped(planePoint(5, 10.3), lines, 0.5)).toEqual({ at: planePoint(5, 10), on: 'edge' });
  // The closing side is an edge too, but not of an open line.
  expect(snapped(planePoint(-0.2, 5), lines, 0.5)).toEqual({ at: planePoint(0, 5), on: 'edge' });
  expect(snapped(planePoint(-0.2, 5), [{ points: square(10), closed: false }], 0.5)).toBeNull();
  expect(snapped(planePoint(5, 11), lines, 0.5)).toBeNull();
});

it('parts a polygon along any line that crosses it, losing no ground', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: -4, max: 4, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      (bearing, aside, bend) => {
        const through = pointAlong(planePoint(5, 5), bearing + 90, aside);
        const line = [
          pointAlong(through, bearing, -12),
          pointAlong(through, bearing + 90, bend),
          pointAlong(through, bearing, 12),
        ];
        const parts = splitPolygon([square(10)], line);
        const area = parts.reduce((sum, part) => sum + polygonAreaM2(part), 0);
        expect(area).toBeCloseTo(100, 6);
        // Well inside, the line parts it in two at least; near a corner it may miss.
        if (Math.abs(aside) + Math.abs(bend) < 4) expect(parts.length).toBeGreaterThanOrEqual(2);
      },
    ),
    { numRuns: 100 },
  );
});

it('parts along a line that only just crosses, and leaves alone what a line does not cross', () => {
  const halves = splitPolygon([square(10)], [planePoint(5, -0.1), planePoint(5, 10.1)]);
  expect(halves.map(polygonAreaM2)).toEqual([expect.closeTo(50, 6), expect.closeTo(50, 6)]);
  const aside = [planePoint(20, -1), planePoint(20, 11)];
  expect(splitPolygon([square(10)], aside)).toEqual([[square(10)]]);
  // A line that crosses itself says nothing clear.
  const loop = [planePoint(-1, 5), planePoint(11, 5), planePoint(11, 2), planePoint(5, 8), planePoint(5, 12)];
  expect(splitPolygon([square(10)], loop)).toHaveLength(1);
});

it('parts a shape with a hole through the hole', () => {
  const ring = [square(10), square(4, 3, 3).toReversed()];
  const parts = splitPolygon(ring, [planePoint(5, -1), planePoint(5, 11)]);
  expect(parts.map(polygonAreaM2)).toEqual([expect.closeTo(42, 6), expect.closeTo(42, 6)]);
  expect(parts.every((part) => part.length === 1)).toBe(true);
});

it('puts a collar of the stated width round a shape', () => {
  const round = circle(planePoint(0, 0), 10, 180);
  const band = collarOf([round], 1);
  expect(band).not.toBeNull();
  for (const point of band?.[0] ?? []) expect(nearestOnLine(point, round, true).distanceM).toBeCloseTo(1, 2);
  expect(polygonAreaM2(band ?? [])).toBeCloseTo(Math.PI * (121 - 100), 0);
  expect(collarOf([round], 0)).toBeNull();
  // A corner for each of the shape's own where it bends gently, and not one bunched with another.
  const few = circle(planePoint(0, 0), 8, 20);
  const outer = collarOf([few], 1)?.[0] ?? [];
  expect(outer).toHaveLength(20);
  for (const [i, point] of outer.entries()) {
    const next = outer[(i + 1) % 20] ?? point;
    const middle = planePoint((point.eastM + next.eastM) / 2, (point.northM + next.northM) / 2);
    expect(nearestOnLine(middle, few, true).distanceM).toBeCloseTo(1, 3);
  }
});

it('turns clockwise and keeps distances', () => {
  const centre = planePoint(2, 3);
  const turned = turnedAbout(planePoint(2, 8), centre, 90);
  expect(bearingDeg(centre, turned)).toBeCloseTo(90, 9);
  expect(distanceM(centre, turned)).toBeCloseTo(5, 12);
});
