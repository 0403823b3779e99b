import fc from 'fast-check';
import { expect, it } from 'vitest';
import { planePoint } from '../../../shared/geometry/points.ts';
import { flagPlace } from '../../../shared/playbook/flagPlace.ts';
import { parseSheetLine, placeFromSheet } from '../../../shared/playbook/pinSheet.ts';

it.each([
  ['12 on, 5 from left', 12, 5, 'left'],
  ['12 5L', 12, 5, 'left'],
  ['14 / R 6', 14, 6, 'right'],
  ['7½ on, 3.5 from the right', 7.5, 3.5, 'right'],
  ['20 deep; 4 l', 20, 4, 'left'],
] as const)('reads %s', (typed, onPaces, sidePaces, side) => {
  expect(parseSheetLine(typed, 'x')).toEqual({ onPaces, sidePaces, side });
});

it.each(['', '12', '12 on', 'five left', '12 on, 5', '3 R, 5 L 2'])('refuses "%s"', (typed) => {
  expect(() => parseSheetLine(typed, 'x')).toThrow(/cannot be read/);
});

const green = [
  Array.from({ length: 48 }, (_, i) => {
    const a = (2 * Math.PI * i) / 48;
    return planePoint(14 * Math.cos(a), 11 * Math.sin(a));
  }),
];

it('finds the place again that a flag is told by, whichever way the green is played', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -8, max: 8, noNaN: true }),
      fc.double({ min: -6, max: 6, noNaN: true }),
      fc.integer({ min: 0, max: 359 }),
      (east, north, bearing) => {
        const told = flagPlace(green, planePoint(east, north), bearing);
        if (told === null) throw new Error('the point lies on the green');
        const side = told.fromLeftM <= told.fromRightM ? 'left' : 'right';
        const aside = side === 'left' ? told.fromLeftM : told.fromRightM;
        const found = placeFromSheet(green, bearing, told.onM, aside, side, 'x');
        const again = flagPlace(green, found, bearing);
        expect(again?.onM).toBeCloseTo(told.onM, 1);
        expect(side === 'left' ? again?.fromLeftM : again?.fromRightM).toBeCloseTo(aside, 1);
      },
    ),
    { numRuns: 100 },
  );
});

it('says so where the green has no such place', () => {
  expect(() => placeFromSheet(green, 0, 40, 3, 'left', 'x')).toThrow(/no place/);
});
