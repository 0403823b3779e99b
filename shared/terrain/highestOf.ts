import type { GridShape } from './hermiteGrid.ts';

/**
 * A height that no ground of a grid of Hermite patches exceeds, on it or beyond it. Within a cell it is the bound of
 * `ceilingOver`. Beyond an edge the ground goes on with the slope there, which is that of the steepest node and a quarter of
 * its twist at most, over less than `fadeM`; beyond a corner with both slopes and the twist of that node.
 *
 * @param nodes four numbers a node: height, then slopes and twist times the cell size
 */
export function highestOf({ cellM, columns, rows }: GridShape, nodes: Float64Array, fadeM: number): number {
  const reach = fadeM / cellM;
  const most = (from: number, count: number, step: number, slot: number): number => {
    let found = -Infinity;
    for (let k = 0; k < count; k += 1) {
      const value = nodes[4 * (from + k * step) + slot] as number;
      found = Math.max(found, slot === 0 ? value : Math.abs(value));
    }
    return found;
  };
  const all = (slot: number): number => most(0, columns * rows, 1, slot);
  let top = all(0) + (all(1) + all(2)) / 4 + all(3) / 16;
  const last = columns * (rows - 1);
  // Both sides with what leads across them: along the side a patch rises as within a cell, across it by the slope there.
  for (const [from, count, step, along, across] of [
    [0, rows, columns, 2, 1],
    [columns - 1, rows, columns, 2, 1],
    [0, columns, 1, 1, 2],
    [last, columns, 1, 1, 2],
  ] as const) {
    const side = (slot: number): number => most(from, count, step, slot);
    top = Math.max(top, side(0) + side(along) / 4 + reach * (side(across) + side(3) / 4));
  }
  for (const corner of [0, columns - 1, last, last + columns - 1]) {
    const at = (slot: number): number => most(corner, 1, 1, slot);
    top = Math.max(top, at(0) + reach * (at(1) + at(2)) + reach * reach * at(3));
  }
  return top;
}
