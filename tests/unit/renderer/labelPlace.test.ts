import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { labelPlace } from '../../../renderer/map/labelPlace.ts';
import type { XY } from '../../../shared/plate/view.ts';

const plate = { x: 0, y: 0, width: 800, height: 500 };
const size = { width: 200, height: 50 };

it('lays the label under what is drawn, and elsewhere rather than over it', () => {
  expect(
    labelPlace([300, 200], size, plate, [
      [
        [250, 100],
        [350, 200],
      ],
    ]),
  ).toEqual([200, 222]);
  // At the foot of the plate there is no room below: it goes above all of it.
  expect(
    labelPlace([300, 490], size, plate, [
      [
        [250, 200],
        [350, 490],
      ],
    ]),
  ).toEqual([200, 128]);
});

it('covers no line where some place on the plate is free of it', () => {
  const place = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 500 }));
  fc.assert(
    fc.property(fc.array(place, { minLength: 2, maxLength: 6 }), (line: readonly XY[]) => {
      const [left, top] = labelPlace(line[0] ?? [0, 0], size, plate, [line]);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left + size.width).toBeLessThanOrEqual(plate.width);
      const along = line.slice(1).flatMap(([x, y], i) => {
        const [a = 0, b = 0] = line[i] ?? [];
        return Array.from({ length: 200 }, (_, k): XY => [a + ((x - a) * k) / 199, b + ((y - b) * k) / 199]);
      });
      const within = (x: number, y: number, aside: number): number =>
        along.filter(
          ([e, s]) =>
            e > x - aside && e < x + size.width + aside && s > y - aside && s < y + size.height + aside,
        ).length;
      const free = [6, 594].some((x) => [6, 444].some((y) => within(x, y, 12) === 0));
      if (free) expect(within(left, top, 0)).toBe(0);
    }),
    { numRuns: 60 },
  );
});
