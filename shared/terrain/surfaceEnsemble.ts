import type { PlanePoint } from '../geometry/points.ts';
import type { Generator } from '../random/generator.ts';
import { heightTarget } from './confidence.ts';
import type { FittedSurface } from './fitSurface.ts';
import { gridOver, type GridShape, hermiteGrid } from './hermiteGrid.ts';
import type { Target } from './plateFit.ts';
import { addFolds, type PlateShape } from './plateShape.ts';
import type { Surface } from './surface.ts';
import { factorCholesky, solveLowerTransposed } from './symmetricMatrix.ts';
import { kernelLog } from './thinPlateKernel.ts';

/** Spots the doubt is drawn at: a lattice over the box about this far apart, and no more of them than `MOST_SPOTS`. */
const SPOT_SPACING_M = 2;
const MOST_SPOTS = 400;
const DEPARTURE_CELL_M = 0.5;

/**
 * Surfaces that agree with the evidence as well as the fitted one does, drawn from what the evidence leaves open: at a
 * lattice of spots the differences from the fit are drawn with their joint covariance, and between the spots each
 * surface takes the most likely course. Detail under the lattice spacing (about 2 m) is left smooth.
 *
 * The same generator state gives the same surfaces. Level ground that was only assumed is returned as it is.
 */
export function surfaceEnsemble(fitted: FittedSurface, count: number, generator: Generator): Surface[] {
  const { plate } = fitted;
  if (plate === null) return Array.from({ length: count }, () => fitted);
  const targets = lattice(fitted).map((at) => heightTarget(plate, at));
  const n = targets.length;
  const covariance = new Float64Array(n * n);
  let largest = 0;
  targets.forEach((a, i) => {
    for (let j = 0; j <= i; j += 1) covariance[i * n + j] = plate.covariance(a, targets[j] as Target);
    largest = Math.max(largest, covariance[i * n + i] as number);
  });
  // A trace of noise keeps the factor alive where readings leave next to nothing open.
  for (let i = 0; i < n; i += 1) {
    covariance[i * n + i] = (covariance[i * n + i] as number) + 1e-9 * largest + 1e-12;
  }
  factorCholesky(covariance, n, kernelLog);
  const departures = Array.from({ length: count }, () => {
    // A draw is d = L z; C^-1 d = L'^-1 z are the weights that carry it to every other place.
    const z = Float64Array.from({ length: n }, () => generator.normal());
    solveLowerTransposed(covariance, n, z);
    return plate.covarianceField(targets, z);
  });
  return addDepartures(fitted, departures);
}

function lattice(box: GridShape): PlanePoint[] {
  const width = (box.columns - 1) * box.cellM;
  const height = (box.rows - 1) * box.cellM;
  const spacing = Math.max(SPOT_SPACING_M, Math.sqrt((width * height) / MOST_SPOTS));
  const columns = Math.max(2, Math.floor(width / spacing) + 1);
  const rows = Math.max(2, Math.floor(height / spacing) + 1);
  return Array.from({ length: columns * rows }, (_, i) => {
    const column = i % columns;
    return {
      eastM: box.originEastM + (width * column) / (columns - 1),
      northM: box.originNorthM + (height * ((i - column) / columns)) / (rows - 1),
    };
  });
}

/**
 * The fitted surface plus each departure. All departures have the same centres, so every kernel is taken once for all; they
 * are smooth, so a coarser grid than the surface's own carries them.
 */
function addDepartures(fitted: FittedSurface, departures: readonly PlateShape[]): Surface[] {
  const first = departures[0];
  if (first === undefined) return [];
  const { originEastM, originNorthM, columns, rows, cellM } = fitted;
  const coarse = gridOver(
    {
      westM: originEastM,
      southM: originNorthM,
      eastM: originEastM + (columns - 1) * cellM,
      northM: originNorthM + (rows - 1) * cellM,
    },
    Math.max(DEPARTURE_CELL_M, cellM),
  );
  const members = departures.length;
  const nodes = coarse.columns * coarse.rows;
  const centres = first.centres.length / 3;
  const coefficients = new Float64Array(centres * members);
  departures.forEach((departure, k) => {
    for (let i = 0; i < centres; i += 1)
      coefficients[i * members + k] = departure.centres[3 * i + 2] as number;
  });
  const heights = departures.map(() => new Float64Array(nodes));
  const east = departures.map(() => new Float64Array(nodes));
  const north = departures.map(() => new Float64Array(nodes));
  const sums = new Float64Array(3 * members);
  for (let node = 0; node < nodes; node += 1) {
    const column = node % coarse.columns;
    const x = originEastM + column * coarse.cellM - first.middleEastM;
    const y = originNorthM + ((node - column) / coarse.columns) * coarse.cellM - first.middleNorthM;
    sums.fill(0);
    for (let i = 0; i < centres; i += 1) {
      const dx = x - (first.centres[3 * i] as number);
      const dy = y - (first.centres[3 * i + 1] as number);
      const r2 = dx * dx + dy * dy;
      if (r2 < 1e-300) continue;
      const logR2 = kernelLog(r2);
      const value = 0.5 * r2 * logR2;
      const slopeEast = dx * (logR2 + 1);
      const slopeNorth = dy * (logR2 + 1);
      const row = i * members;
      for (let k = 0; k < members; k += 1) {
        const c = coefficients[row + k] as number;
        sums[3 * k] = (sums[3 * k] as number) + c * value;
        sums[3 * k + 1] = (sums[3 * k + 1] as number) + c * slopeEast;
        sums[3 * k + 2] = (sums[3 * k + 2] as number) + c * slopeNorth;
      }
    }
    departures.forEach(({ plane }, k) => {
      const level = plane[0] as number;
      const riseEast = plane[1] as number;
      const riseNorth = plane[2] as number;
      (heights[k] as Float64Array)[node] = (sums[3 * k] as number) + level + riseEast * x + riseNorth * y;
      (east[k] as Float64Array)[node] = (sums[3 * k + 1] as number) + riseEast;
      (north[k] as Float64Array)[node] = (sums[3 * k + 2] as number) + riseNorth;
    });
  }
  const scales = scalesOn(fitted, coarse);
  return departures.map((departure, k) => {
    const h = heights[k] as Float64Array;
    const e = east[k] as Float64Array;
    const n = north[k] as Float64Array;
    if (departure.folds.count > 0) addFolds(departure, coarse, { heights: h, east: e, north: n });
    roughen(scales, h, e, n);
    return sumOnGrid(fitted, hermiteGrid(coarse, h, e, n));
  });
}

/** The factor on the doubt at the nodes of a grid, with its slopes by differences over a tenth of a cell. */
function scalesOn(fitted: FittedSurface, shape: GridShape): Float64Array {
  const scales = new Float64Array(3 * shape.columns * shape.rows);
  const step = shape.cellM / 10;
  for (let node = 0; 3 * node < scales.length; node += 1) {
    const column = node % shape.columns;
    const x = shape.originEastM + column * shape.cellM;
    const y = shape.originNorthM + ((node - column) / shape.columns) * shape.cellM;
    const here = fitted.doubtScale(x, y);
    scales[3 * node] = here;
    scales[3 * node + 1] = (fitted.doubtScale(x + step, y) - here) / step;
    scales[3 * node + 2] = (fitted.doubtScale(x, y + step) - here) / step;
  }
  return scales;
}

/** Multiplies a field by the local factor, slopes by the product rule. */
function roughen(scales: Float64Array, heights: Float64Array, east: Float64Array, north: Float64Array): void {
  for (let node = 0; node < heights.length; node += 1) {
    const height = heights[node] as number;
    const scale = scales[3 * node] as number;
    heights[node] = scale * height;
    east[node] = scale * (east[node] as number) + (scales[3 * node + 1] as number) * height;
    north[node] = scale * (north[node] as number) + (scales[3 * node + 2] as number) * height;
  }
}

function sumOnGrid(base: FittedSurface, other: Surface): Surface {
  const { columns, rows, cellM, originEastM, originNorthM } = base;
  const heights = new Float64Array(columns * rows);
  const east = new Float64Array(columns * rows);
  const north = new Float64Array(columns * rows);
  const a = new Float64Array(3);
  const b = new Float64Array(3);
  for (let node = 0; node < heights.length; node += 1) {
    const column = node % columns;
    const x = originEastM + column * cellM;
    const y = originNorthM + ((node - column) / columns) * cellM;
    base.sampleHeight(x, y, a);
    other.sampleHeight(x, y, b);
    heights[node] = (a[0] as number) + (b[0] as number);
    east[node] = (a[1] as number) + (b[1] as number);
    north[node] = (a[2] as number) + (b[2] as number);
  }
  return hermiteGrid({ originEastM, originNorthM, cellM, columns, rows }, heights, east, north);
}
