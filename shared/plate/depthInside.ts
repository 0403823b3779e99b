import { type Shape, spansAt, squareToSide } from './shape.ts';

/** A grid over a drawing: its first node, the spacing of its nodes and how many there are each way. */
export interface DrawingGrid {
  readonly x: number;
  readonly y: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Distance to the nearest side at each node of a grid, row by row, negative outside. Nodes beside a side and on the
 * border measure; the others take over the nearest side of their neighbours in two sweeps (a vector distance transform,
 * Danielsson 1980), so that the cost hardly grows with the number of sides. A few nodes far in may be a little too deep.
 */
export function depthInside(shape: Shape, grid: DrawingGrid): Float64Array {
  const { x, y, cell, columns, rows } = grid;
  const { edges } = shape;
  const nearest = new Int32Array(columns * rows).fill(-1);
  const squares = new Float64Array(columns * rows).fill(Infinity);
  const offer = (i: number, j: number, edge: number): void => {
    const at = j * columns + i;
    const square = squareToSide(edges, edge, x + i * cell, y + j * cell);
    if (square >= (squares[at] ?? 0)) return;
    squares[at] = square;
    nearest[at] = edge;
  };
  for (let edge = 0; edge < edges.length; edge += 4) {
    besideSide(edges, edge, grid, (i, j) => offer(i, j, edge));
    // What lies beyond the grid reaches into it over its border.
    for (let i = 0; i < columns; i += 1) {
      offer(i, 0, edge);
      offer(i, rows - 1, edge);
    }
    for (let j = 0; j < rows; j += 1) {
      offer(0, j, edge);
      offer(columns - 1, j, edge);
    }
  }
  const takeOver = (i: number, j: number, from: number): void => {
    const edge = nearest[from] ?? -1;
    if (edge >= 0 && edge !== nearest[j * columns + i]) offer(i, j, edge);
  };
  for (const down of [true, false]) {
    for (let row = 1; row < rows; row += 1) {
      const j = down ? row : rows - 1 - row;
      const before = (down ? j - 1 : j + 1) * columns;
      for (let i = 0; i < columns; i += 1) {
        for (let k = Math.max(0, i - 1); k <= Math.min(columns - 1, i + 1); k += 1)
          takeOver(i, j, before + k);
      }
      for (let i = 1; i < columns; i += 1) takeOver(i, j, j * columns + i - 1);
      for (let i = columns - 2; i >= 0; i -= 1) takeOver(i, j, j * columns + i + 1);
    }
  }
  for (let j = 0; j < rows; j += 1) signRow(squares, j, spansAt(shape, y + j * cell), grid);
  return squares;
}

/** Distances of one row from their squares, negative outside the spans. */
function signRow(
  squares: Float64Array,
  j: number,
  spans: readonly number[],
  { x, cell, columns }: DrawingGrid,
): void {
  let crossed = 0;
  for (let i = 0; i < columns; i += 1) {
    while (crossed < spans.length && (spans[crossed] ?? Infinity) <= x + i * cell) crossed += 1;
    const depth = Math.sqrt(squares[j * columns + i] ?? 0);
    squares[j * columns + i] = crossed % 2 === 1 ? depth : -depth;
  }
}

/** Visits the nodes round every cell a side passes through. */
function besideSide(
  edges: Float64Array,
  edge: number,
  { x, y, cell, columns, rows }: DrawingGrid,
  visit: (i: number, j: number) => void,
): void {
  const ax = ((edges[edge] ?? 0) - x) / cell;
  const ay = ((edges[edge + 1] ?? 0) - y) / cell;
  const dx = ((edges[edge + 2] ?? 0) - x) / cell - ax;
  const dy = ((edges[edge + 3] ?? 0) - y) / cell - ay;
  const steps = Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))) + 1;
  for (let k = 0; k <= steps; k += 1) {
    const column = Math.floor(ax + (dx * k) / steps);
    const row = Math.floor(ay + (dy * k) / steps);
    for (let j = Math.max(0, row); j <= Math.min(rows - 1, row + 1); j += 1) {
      for (let i = Math.max(0, column); i <= Math.min(columns - 1, column + 1); i += 1) visit(i, j);
    }
  }
}
