import { expect, it } from 'vitest';
import type { SurroundsMap } from '../../../shared/planner/surroundsMap.ts';
import { surroundsOver } from '../../../shared/planner/surroundsOver.ts';

const map = (flagId: string, westM: number, strokes: number[], simple: number[]): SurroundsMap => ({
  flagId,
  westM,
  southM: 0,
  cellM: 1,
  columns: 2,
  rows: 1,
  strokes: Float32Array.from(strokes),
  simple: Uint8Array.from(simple),
});

it('means strokes over the flags, keeps what is out of play, and takes the technique most flags ask for', () => {
  const over = surroundsOver([
    map('A', 0, [2, NaN], [0, 255]),
    map('B', 0, [3, 2], [2, 2]),
    map('C', 1, [4, 5], [2, 3]),
  ]);
  expect([over.westM, over.columns, over.rows]).toEqual([0, 3, 1]);
  expect([...over.strokes]).toEqual([2.5, NaN, 5]);
  // Two flags ask for techniques 0 and 2 equally often: the simpler; where A is out of play B and C agree; then C alone.
  expect([...over.simple]).toEqual([0, 2, 3]);
});

it('is the map itself for one flag, and follows grids that lie between cells', () => {
  const one = map('A', 0, [2, 3], [0, 1]);
  expect(surroundsOver([one])).toBe(one);
  const over = surroundsOver([one, map('B', -0.4, [4, 6], [0, 1])]);
  expect(over.westM).toBe(-1);
  // Nothing has its middle in the first cell.
  expect([...over.strokes]).toEqual([NaN, 3, 4.5]);
});
