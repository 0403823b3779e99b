import { meets } from './box.ts';
import type { Box } from './ring.ts';

/** An item spread over more cells than this is kept apart and looked at every time. */
const MOST_CELLS = 256;
/** Cells are numbered from so far west and south of the origin; 2^21 of them a row. */
const OFFSET = 2 ** 20;
const ROW = 2 ** 21;

/** Things with a box, found by where they lie: a square grid over the plane, of which only cells in use exist. */
export class CellGrid<T extends { readonly box: Box }> {
  readonly cellM: number;
  readonly #cells = new Map<number, T[]>();
  readonly #wide = new Set<T>();

  constructor(cellM: number) {
    this.cellM = cellM;
  }

  add(item: T): void {
    const over = this.#cellsOf(item.box);
    if (isWide(over)) {
      this.#wide.add(item);
      return;
    }
    for (let row = over.south; row <= over.north; row += 1)
      for (let column = over.west; column <= over.east; column += 1) {
        const cell = this.#cells.get(row * ROW + column);
        if (cell === undefined) this.#cells.set(row * ROW + column, [item]);
        else cell.push(item);
      }
  }

  remove(item: T): void {
    if (this.#wide.delete(item)) return;
    const over = this.#cellsOf(item.box);
    for (let row = over.south; row <= over.north; row += 1)
      for (let column = over.west; column <= over.east; column += 1) {
        const key = row * ROW + column;
        const cell = this.#cells.get(key);
        const at = cell?.indexOf(item) ?? -1;
        if (cell === undefined || at < 0) continue;
        if (cell.length === 1) this.#cells.delete(key);
        else cell.splice(at, 1);
      }
  }

  clear(): void {
    this.#cells.clear();
    this.#wide.clear();
  }

  /** Everything whose box meets this one, each thing once, in no order that means anything. */
  within(box: Box): T[] {
    const found: T[] = [];
    for (const item of this.#wide) if (meets(item.box, box)) found.push(item);
    const over = this.#cellsOf(box);
    // A look over the whole sheet goes through the cells in use instead of all there could be.
    if ((over.east - over.west + 1) * (over.north - over.south + 1) > this.#cells.size) {
      for (const [key, cell] of this.#cells) {
        const row = Math.floor(key / ROW);
        const column = key - row * ROW;
        if (row >= over.south && row <= over.north && column >= over.west && column <= over.east)
          this.#collect(cell, row, column, over, box, found);
      }
      return found;
    }
    for (let row = over.south; row <= over.north; row += 1)
      for (let column = over.west; column <= over.east; column += 1) {
        const cell = this.#cells.get(row * ROW + column);
        if (cell !== undefined) this.#collect(cell, row, column, over, box, found);
      }
    return found;
  }

  /** Of a thing in several cells only the most south-westerly one that is looked at counts. */
  #collect(cell: readonly T[], row: number, column: number, over: Cells, box: Box, found: T[]): void {
    for (const item of cell) {
      const own = item.box;
      if (!meets(own, box)) continue;
      if (Math.max(this.#cell(own.southM), over.south) !== row) continue;
      if (Math.max(this.#cell(own.westM), over.west) !== column) continue;
      found.push(item);
    }
  }

  #cell(metres: number): number {
    return Math.floor(metres / this.cellM) + OFFSET;
  }

  #cellsOf(box: Box): Cells {
    return {
      west: this.#cell(box.westM),
      south: this.#cell(box.southM),
      east: this.#cell(box.eastM),
      north: this.#cell(box.northM),
    };
  }
}

interface Cells {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

const isWide = ({ west, south, east, north }: Cells): boolean =>
  (east - west + 1) * (north - south + 1) > MOST_CELLS;
