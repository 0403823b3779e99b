import type { GridShape } from './hermiteGrid.ts';

/** Heights that no ground under a block exceeds: what flies above it there meets none. It is the ball model's `Ceiling`. */
export type Ceiling = ReturnType<typeof ceilingOver>;

/** Cells of the grid to the side of a block. */
const BLOCK_CELLS = 4;

/**
 * The ceiling over a grid of Hermite patches (`hermiteGrid`). Within a cell the weights of the two slopes of a side come to
 * a quarter at most, so a patch rises above its highest node by no more than a quarter of its steepest slope each way and
 * a sixteenth of its twist, all per cell. Each block takes in a cell about it, for a way that bends a little out of its box.
 *
 * @param nodes four numbers a node: height, then slopes and twist times the cell size
 */
export function ceilingOver(
  { originEastM, originNorthM, cellM, columns, rows }: GridShape,
  nodes: Float64Array,
) {
  const across = Math.max(1, Math.floor((columns - 1) / BLOCK_CELLS));
  const up = Math.max(1, Math.floor((rows - 1) / BLOCK_CELLS));
  const heightsM = new Float64Array(across * up);
  for (let row = 0; row < up; row += 1) {
    for (let column = 0; column < across; column += 1) {
      let height = -Infinity;
      let east = 0;
      let north = 0;
      let twist = 0;
      const lastRow = Math.min(rows - 1, (row + 1) * BLOCK_CELLS + 1);
      const lastColumn = Math.min(columns - 1, (column + 1) * BLOCK_CELLS + 1);
      for (let r = Math.max(0, row * BLOCK_CELLS - 1); r <= lastRow; r += 1) {
        for (let c = Math.max(0, column * BLOCK_CELLS - 1); c <= lastColumn; c += 1) {
          const node = 4 * (r * columns + c);
          height = Math.max(height, nodes[node] as number);
          east = Math.max(east, Math.abs(nodes[node + 1] as number));
          north = Math.max(north, Math.abs(nodes[node + 2] as number));
          twist = Math.max(twist, Math.abs(nodes[node + 3] as number));
        }
      }
      heightsM[row * across + column] = height + (east + north) / 4 + twist / 16;
    }
  }
  return {
    westM: originEastM,
    southM: originNorthM,
    perM: 1 / (BLOCK_CELLS * cellM),
    columns: across,
    rows: up,
    heightsM,
  };
}
