import type { PlanePoint } from '../geometry/points.ts';
import type { GridShape } from './hermiteGrid.ts';

/** A line of one value through a grid; a closed one does not repeat its first point. */
export interface Isoline {
  readonly points: readonly PlanePoint[];
  readonly closed: boolean;
}

/**
 * Lines of one value by marching squares (Lorensen & Cline 1987 in two dimensions; from memory), joined end to end. Higher
 * ground lies to the left. A saddle is cut by the mean of its corners, so no two lines cross.
 *
 * @param values at nodes, row by row from the south-west
 */
export function isolines(shape: GridShape, values: Float64Array, level: number): Isoline[] {
  const { originEastM, originNorthM, cellM, columns, rows } = shape;
  // A crossing lies on an edge of the grid: 2 x node for the edge to the east of a node, + 1 for the one to the north.
  const next = new Map<number, number>();
  const startsOnly = new Set<number>();
  const link = (from: number, to: number): void => {
    next.set(from, to);
  };
  const above = (node: number): boolean => (values[node] as number) >= level;
  for (let row = 0; row + 1 < rows; row += 1) {
    for (let column = 0; column + 1 < columns; column += 1) {
      const sw = row * columns + column;
      const nw = sw + columns;
      const corners =
        (above(sw) ? 1 : 0) | (above(sw + 1) ? 2 : 0) | (above(nw + 1) ? 4 : 0) | (above(nw) ? 8 : 0);
      if (corners === 0 || corners === 15) continue;
      const south = 2 * sw;
      const north = 2 * nw;
      const west = 2 * sw + 1;
      const east = 2 * (sw + 1) + 1;
      const highMiddle =
        ((values[sw] as number) +
          (values[sw + 1] as number) +
          (values[nw] as number) +
          (values[nw + 1] as number)) /
          4 >=
        level;
      switch (corners) {
        case 1:
          link(south, west);
          break;
        case 2:
          link(east, south);
          break;
        case 3:
          link(east, west);
          break;
        case 4:
          link(north, east);
          break;
        case 5:
          if (highMiddle) {
            link(south, east);
            link(north, west);
          } else {
            link(south, west);
            link(north, east);
          }
          break;
        case 6:
          link(north, south);
          break;
        case 7:
          link(north, west);
          break;
        case 8:
          link(west, north);
          break;
        case 9:
          link(south, north);
          break;
        case 10:
          if (highMiddle) {
            link(east, north);
            link(west, south);
          } else {
            link(east, south);
            link(west, north);
          }
          break;
        case 11:
          link(east, north);
          break;
        case 12:
          link(west, east);
          break;
        case 13:
          link(south, east);
          break;
        default:
          link(west, south);
      }
    }
  }
  for (const from of next.keys()) startsOnly.add(from);
  for (const to of next.values()) startsOnly.delete(to);

  const place = (edge: number): PlanePoint => {
    const node = edge >> 1;
    const northward = (edge & 1) === 1;
    const other = northward ? node + columns : node + 1;
    const a = values[node] as number;
    const b = values[other] as number;
    const t = Math.min(1, Math.max(0, (level - a) / (b - a)));
    const column = node % columns;
    const row = (node - column) / columns;
    return {
      eastM: originEastM + (column + (northward ? 0 : t)) * cellM,
      northM: originNorthM + (row + (northward ? t : 0)) * cellM,
    };
  };
  const lines: Isoline[] = [];
  const trace = (start: number, closed: boolean): void => {
    const points: PlanePoint[] = [];
    let edge: number | undefined = start;
    while (edge !== undefined) {
      const at = place(edge);
      const last = points.at(-1);
      // A line through a node crosses several edges in one place.
      if (last?.eastM !== at.eastM || last.northM !== at.northM) points.push(at);
      const to = next.get(edge);
      next.delete(edge);
      edge = to;
    }
    if (closed) points.pop();
    if (points.length >= 2) lines.push({ points, closed });
  };
  for (const start of startsOnly) trace(start, false);
  for (;;) {
    const first = next.keys().next();
    if (first.done === true) return lines;
    trace(first.value, true);
  }
}
