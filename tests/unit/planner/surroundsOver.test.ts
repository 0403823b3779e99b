import { expect, it } from 'vitest';
import { planePoint } from '../../../shared/geometry/points.ts';
import { surroundsAt } from '../../../shared/planner/surroundsAt.ts';
import { DEPENDS_ON_FLAG, type SurroundsMap } from '../../../shared/planner/surroundsMap.ts';
import { surroundsOver } from '../../../shared/planner/surroundsOver.ts';

const map = (flagId: string, westM: number, strokes: number[], simple: number[]): SurroundsMap => ({
  flagId,
  westM,
  southM: 0,
  cellM: 1,
  columns: strokes.length,
  rows: 1,
  strokes: Float32Array.from(strokes),
  simple: Uint8Array.from(simple),
  perFlag: [],
});

it('means strokes over the flags, keeps what is out of play, and says where the choice depends on the flag', () => {
  const over = surroundsOver([
    map('A', 0, [2, NaN, 3], [0, 255, 3]),
    map('B', 0, [3, 2, 2], [2, 2, 3]),
    map('C', 1, [4, 5, 6], [2, 3, 2]),
  ]);
  expect([over.westM, over.columns, over.rows]).toEqual([0, 4, 1]);
  expect([...over.strokes]).toEqual([2.5, NaN, expect.closeTo(10 / 3, 6), 6]);
  // A and B differ; where A is out of play all are; three agree; then C alone.
  expect([...over.simple]).toEqual([DEPENDS_ON_FLAG, 255, 3, 2]);
  expect(surroundsAt(over, planePoint(0.5, 0.5))).toEqual({
    strokes: 2.5,
    simple: 'depends',
    // C does not reach so far west.
    perFlag: [
      { flagId: 'A', simple: 'putt' },
      { flagId: 'B', simple: 'chip' },
    ],
  });
  expect(surroundsAt(over, planePoint(2.5, 0.5))).toMatchObject({ simple: 'pitch', perFlag: [] });
  expect([surroundsAt(over, planePoint(1.5, 0.5)), surroundsAt(over, planePoint(4.5, 0.5))]).toEqual([
    null,
    null,
  ]);
});

it('is the map itself for one flag, and follows grids that lie between cells', () => {
  const one = map('A', 0, [2, 3], [0, 1]);
  expect(surroundsOver([one])).toBe(one);
  const over = surroundsOver([one, map('B', -0.4, [4, 6], [0, 1])]);
  expect(over.westM).toBe(-1);
  // Nothing has its middle in the first cell.
  expect([...over.strokes]).toEqual([NaN, 3, 4.5]);
});
