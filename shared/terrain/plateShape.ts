import type { Folds } from './folds.ts';
import { type GridShape, hermiteGrid } from './hermiteGrid.ts';
import type { Surface } from './surface.ts';
import { kernelLog, thinPlateKernel } from './thinPlateKernel.ts';

/** A plate in closed form: a plane, bent by kernels and folded along lines. */
export interface PlateShape {
  /** Places below are counted from here. */
  readonly middleEastM: number;
  readonly middleNorthM: number;
  /** Kernel centres as flat [east, north, coefficient] triples. */
  readonly centres: Float64Array;
  /** Height at the middle and rise per metre east and north. */
  readonly plane: Float64Array;
  readonly folds: Folds;
  readonly foldJumps: Float64Array;
}

/** Height of a fitted plate at a point, in closed form (no grid). */
export function plateHeight(fit: PlateShape, eastM: number, northM: number): number {
  const x = eastM - fit.middleEastM;
  const y = northM - fit.middleNorthM;
  const { centres, plane } = fit;
  let sum = (plane[0] as number) + (plane[1] as number) * x + (plane[2] as number) * y;
  for (let i = 0; i < centres.length; i += 3) {
    const dx = x - (centres[i] as number);
    const dy = y - (centres[i + 1] as number);
    sum += (centres[i + 2] as number) * thinPlateKernel(dx * dx + dy * dy);
  }
  if (fit.folds.count > 0) {
    const folds = new Float64Array(fit.folds.count);
    fit.folds.sample(eastM, northM, folds);
    for (let k = 0; k < folds.length; k += 1) sum += (fit.foldJumps[k] as number) * (folds[k] as number);
  }
  return sum;
}

/** Heights and slopes of a plate at the nodes of a grid, as a surface. */
export function plateOnGrid(plate: PlateShape, shape: GridShape): Surface {
  const { columns, rows, cellM } = shape;
  const heights = new Float64Array(columns * rows);
  const east = new Float64Array(columns * rows);
  const north = new Float64Array(columns * rows);
  const { centres, plane } = plate;
  const planeHeight = plane[0] as number;
  const planeEast = plane[1] as number;
  const planeNorth = plane[2] as number;
  for (let row = 0; row < rows; row += 1) {
    const y = shape.originNorthM + row * cellM - plate.middleNorthM;
    for (let column = 0; column < columns; column += 1) {
      const x = shape.originEastM + column * cellM - plate.middleEastM;
      let h = planeHeight + planeEast * x + planeNorth * y;
      let hx = planeEast;
      let hy = planeNorth;
      for (let i = 0; i < centres.length; i += 3) {
        const dx = x - (centres[i] as number);
        const dy = y - (centres[i + 1] as number);
        const r2 = dx * dx + dy * dy;
        if (r2 < 1e-300) continue;
        const c = centres[i + 2] as number;
        const logR2 = kernelLog(r2);
        h += 0.5 * c * r2 * logR2;
        hx += c * dx * (logR2 + 1);
        hy += c * dy * (logR2 + 1);
      }
      const node = row * columns + column;
      heights[node] = h;
      east[node] = hx;
      north[node] = hy;
    }
  }
  if (plate.folds.count > 0) addFolds(plate, shape, heights, east, north);
  return hermiteGrid(shape, heights, east, north);
}

/** Folds by their heights at the nodes; their slopes by central differences, which rounds a fold over one cell. */
export function addFolds(
  plate: PlateShape,
  shape: GridShape,
  heights: Float64Array,
  east: Float64Array,
  north: Float64Array,
): void {
  const { columns, rows, cellM } = shape;
  // One node more on every side for the differences.
  const wide = columns + 2;
  const folded = new Float64Array(wide * (rows + 2));
  const at = new Float64Array(plate.folds.count);
  for (let row = 0; row < rows + 2; row += 1) {
    for (let column = 0; column < wide; column += 1) {
      plate.folds.sample(
        shape.originEastM + (column - 1) * cellM,
        shape.originNorthM + (row - 1) * cellM,
        at,
      );
      let sum = 0;
      for (let k = 0; k < at.length; k += 1) sum += (plate.foldJumps[k] as number) * (at[k] as number);
      folded[row * wide + column] = sum;
    }
  }
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const node = row * columns + column;
      const i = (row + 1) * wide + column + 1;
      heights[node] = (heights[node] as number) + (folded[i] as number);
      east[node] =
        (east[node] as number) + ((folded[i + 1] as number) - (folded[i - 1] as number)) / (2 * cellM);
      north[node] =
        (north[node] as number) + ((folded[i + wide] as number) - (folded[i - wide] as number)) / (2 * cellM);
    }
  }
}
