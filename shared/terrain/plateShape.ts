import { evenly, type Folds } from './folds.ts';
import { type Box, gridOver, type GridShape, hermiteGrid, type GridSurface } from './hermiteGrid.ts';
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
  return fit.folds.count > 0 ? sum + folding(fit)(eastM, northM) : sum;
}

/** How far from a break line a fold is taken exactly at every node; beyond, its course on the coarser grid will do. */
const NEAR_FOLD_M = 1.5;

/**
 * A plate as a surface on a grid of the given cells: in closed form at the nodes of one of twice that size, from where its
 * patches give the nodes between (to a tenth of a millimetre at 0.5 m), and exactly at every node near a break line.
 */
export function plateOnGrid(plate: PlateShape, box: Box, cellM: number): GridSurface {
  const coarse = gridOver(box, 2 * cellM);
  const smooth = smoothPart(plate, coarse);
  const smoothPatches = hermiteGrid(coarse, smooth.heights, smooth.east, smooth.north);
  let patches = smoothPatches;
  if (plate.folds.count > 0) {
    addFolds(plate, coarse, smooth);
    patches = hermiteGrid(coarse, smooth.heights, smooth.east, smooth.north);
  }
  const { originEastM, originNorthM } = coarse;
  const columns = 2 * coarse.columns - 1;
  const rows = 2 * coarse.rows - 1;
  const shape = { originEastM, originNorthM, cellM, columns, rows };
  const near = nodesNear(plate.folds, shape, NEAR_FOLD_M);
  const heights = new Float64Array(columns * rows);
  const east = new Float64Array(heights.length);
  const north = new Float64Array(heights.length);
  const out = new Float64Array(3);
  const foldAt = folding(plate);
  for (let node = 0; node < heights.length; node += 1) {
    const column = node % columns;
    const x = originEastM + column * cellM;
    const y = originNorthM + ((node - column) / columns) * cellM;
    if (near[node] === 1) {
      smoothPatches.sampleHeight(x, y, out);
      heights[node] = (out[0] as number) + foldAt(x, y);
      // Central differences round a fold over one cell.
      east[node] = (out[1] as number) + (foldAt(x + cellM, y) - foldAt(x - cellM, y)) / (2 * cellM);
      north[node] = (out[2] as number) + (foldAt(x, y + cellM) - foldAt(x, y - cellM)) / (2 * cellM);
    } else {
      patches.sampleHeight(x, y, out);
      heights[node] = out[0] as number;
      east[node] = out[1] as number;
      north[node] = out[2] as number;
    }
  }
  return hermiteGrid(shape, heights, east, north);
}

/** Marks the nodes of a grid within a distance of any folded line. */
function nodesNear(folds: Folds, shape: GridShape, withinM: number): Uint8Array {
  const { originEastM, originNorthM, cellM, columns, rows } = shape;
  const near = new Uint8Array(columns * rows);
  for (const line of folds.lines) {
    for (const point of evenly(line, withinM)) {
      // Half a spacing more, so that discs about the points cover the whole band.
      const reach = 1.5 * withinM;
      const from = Math.max(0, Math.ceil((point.northM - reach - originNorthM) / cellM));
      const to = Math.min(rows - 1, Math.floor((point.northM + reach - originNorthM) / cellM));
      for (let row = from; row <= to; row += 1) {
        const dy = originNorthM + row * cellM - point.northM;
        const half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
        const left = Math.max(0, Math.ceil((point.eastM - half - originEastM) / cellM));
        const right = Math.min(columns - 1, Math.floor((point.eastM + half - originEastM) / cellM));
        if (right >= left) near.fill(1, row * columns + left, row * columns + right + 1);
      }
    }
  }
  return near;
}

/** The height all folds of a plate add at a point. */
function folding(plate: PlateShape): (eastM: number, northM: number) => number {
  const at = new Float64Array(plate.folds.count);
  return (eastM, northM) => {
    plate.folds.sample(eastM, northM, at);
    let sum = 0;
    for (let k = 0; k < at.length; k += 1) sum += (plate.foldJumps[k] as number) * (at[k] as number);
    return sum;
  };
}

/** Heights and slopes at the nodes of a grid. */
export interface NodeValues {
  readonly heights: Float64Array;
  readonly east: Float64Array;
  readonly north: Float64Array;
}

/** Plane and kernels of a plate, without its folds, at the nodes of a grid. */
function smoothPart(plate: PlateShape, shape: GridShape): NodeValues {
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
  return { heights, east, north };
}

/** Adds folds at the nodes of a grid by their heights; their slopes by central differences. */
export function addFolds(plate: PlateShape, shape: GridShape, { heights, east, north }: NodeValues): void {
  const { columns, rows, cellM } = shape;
  // One node more on every side for the differences.
  const wide = columns + 2;
  const folded = new Float64Array(wide * (rows + 2));
  const foldAt = folding(plate);
  for (let i = 0; i < folded.length; i += 1) {
    const column = i % wide;
    folded[i] = foldAt(
      shape.originEastM + (column - 1) * cellM,
      shape.originNorthM + ((i - column) / wide - 1) * cellM,
    );
  }
  for (let node = 0; node < heights.length; node += 1) {
    const column = node % columns;
    const i = ((node - column) / columns + 1) * wide + column + 1;
    heights[node] = (heights[node] as number) + (folded[i] as number);
    east[node] =
      (east[node] as number) + ((folded[i + 1] as number) - (folded[i - 1] as number)) / (2 * cellM);
    north[node] =
      (north[node] as number) + ((folded[i + wide] as number) - (folded[i - wide] as number)) / (2 * cellM);
  }
}
