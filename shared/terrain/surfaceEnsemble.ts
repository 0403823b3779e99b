import type { PlanePoint } from '../geometry/points.ts';
import type { Generator } from '../random/generator.ts';
import { heightTarget, heightVariance, variance } from './confidence.ts';
import type { FittedSurface } from './fitSurface.ts';
import { gridOver, type GridShape, hermiteGrid, type GridSurface, PER_NODE } from './hermiteGrid.ts';
import type { Target } from './plateDoubt.ts';
import { addFolds, type PlateShape } from './plateShape.ts';
import { factorCholesky, solveLowerTransposed } from './symmetricMatrix.ts';
import { kernelLog } from './thinPlateKernel.ts';

/** Spots the doubt is drawn at: a lattice over the box about this far apart, and no more of them than `MOST_SPOTS`. */
const SPOT_SPACING_M = 2;
const MOST_SPOTS = 400;
const DEPARTURE_CELL_M = 1;

/**
 * Surfaces that agree with the evidence as well as the fitted one does, drawn from what the evidence leaves open: at a
 * lattice of spots the differences from the fit are drawn with their joint covariance, and between the spots each
 * surface takes the most likely course. Detail under the lattice spacing (about 2 m) is left smooth.
 *
 * The same generator state gives the same surfaces. Level ground that was only assumed is returned as it is.
 *
 * @param on the fit on the grid that the surfaces are to have, where it is at hand: then `fitted` may be on a coarser one
 */
export function surfaceEnsemble(
  fitted: FittedSurface,
  count: number,
  generator: Generator,
  on: GridSurface = fitted,
): GridSurface[] {
  const { plate } = fitted;
  if (plate === null) return Array.from({ length: count }, () => on);
  const spots = latticeOver(on);
  const targets = spots.places.map((at) => heightTarget(plate, at));
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
  // What the doubt at the spots is of the plate's own, which the draws have.
  const factors = Float64Array.from(spots.places, (at, i) => {
    const own = variance(plate, targets[i] as Target);
    return own > 0 ? Math.sqrt(heightVariance(fitted, plate, at) / own) : 1;
  });
  return addDepartures(on, departures, { ...spots, factors });
}

/** Spots in rows from the south-west over the whole box. */
interface Lattice {
  readonly places: readonly PlanePoint[];
  readonly columns: number;
  readonly rows: number;
  readonly stepEastM: number;
  readonly stepNorthM: number;
}

function latticeOver(box: GridShape): Lattice {
  const width = (box.columns - 1) * box.cellM;
  const height = (box.rows - 1) * box.cellM;
  const spacing = Math.max(SPOT_SPACING_M, Math.sqrt((width * height) / MOST_SPOTS));
  const columns = Math.max(2, Math.floor(width / spacing) + 1);
  const rows = Math.max(2, Math.floor(height / spacing) + 1);
  const stepEastM = width / (columns - 1);
  const stepNorthM = height / (rows - 1);
  const places = Array.from({ length: columns * rows }, (_, i) => {
    const column = i % columns;
    return {
      eastM: box.originEastM + column * stepEastM,
      northM: box.originNorthM + ((i - column) / columns) * stepNorthM,
    };
  });
  return { places, columns, rows, stepEastM, stepNorthM };
}

/**
 * The fitted surface plus each departure. All departures have the same centres, so every kernel is taken once for all; they
 * are smooth, so a coarser grid than the surface's own carries them.
 */
function addDepartures(
  fitted: GridSurface,
  departures: readonly PlateShape[],
  spots: Lattice & { readonly factors: Float64Array },
): GridSurface[] {
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
  const scales = scalesOn(spots, coarse);
  return departures.map((departure, k) => {
    const h = heights[k] as Float64Array;
    const e = east[k] as Float64Array;
    const n = north[k] as Float64Array;
    if (departure.folds.count > 0) addFolds(departure, coarse, { heights: h, east: e, north: n });
    roughen(scales, h, e, n);
    return sumOnGrid(fitted, hermiteGrid(coarse, h, e, n));
  });
}

/** The factor on the draws at the nodes of a grid with its slopes, straight between the spots. */
function scalesOn(
  { columns, rows, stepEastM, stepNorthM, factors }: Lattice & { readonly factors: Float64Array },
  shape: GridShape,
): Float64Array {
  const scales = new Float64Array(3 * shape.columns * shape.rows);
  for (let node = 0; 3 * node < scales.length; node += 1) {
    const column = node % shape.columns;
    const x = (column * shape.cellM) / stepEastM;
    const y = (((node - column) / shape.columns) * shape.cellM) / stepNorthM;
    const i = Math.min(columns - 2, Math.floor(x));
    const j = Math.min(rows - 2, Math.floor(y));
    const u = Math.min(1, x - i);
    const v = Math.min(1, y - j);
    const southWest = factors[j * columns + i] as number;
    const southEast = factors[j * columns + i + 1] as number;
    const northWest = factors[(j + 1) * columns + i] as number;
    const northEast = factors[(j + 1) * columns + i + 1] as number;
    const south = southWest + u * (southEast - southWest);
    const north = northWest + u * (northEast - northWest);
    scales[3 * node] = south + v * (north - south);
    scales[3 * node + 1] = ((1 - v) * (southEast - southWest) + v * (northEast - northWest)) / stepEastM;
    scales[3 * node + 2] = (north - south) / stepNorthM;
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

/** The departure at the nodes of the fit added to it. */
function sumOnGrid(fitted: GridSurface, departure: GridSurface): GridSurface {
  const { columns, rows, cellM, originEastM, originNorthM } = fitted;
  const heights = new Float64Array(columns * rows);
  const east = new Float64Array(columns * rows);
  const north = new Float64Array(columns * rows);
  const out = new Float64Array(3);
  for (let node = 0; node < heights.length; node += 1) {
    const column = node % columns;
    const x = originEastM + column * cellM;
    const y = originNorthM + ((node - column) / columns) * cellM;
    departure.sampleHeight(x, y, out);
    heights[node] = (fitted.nodes[PER_NODE * node] as number) + (out[0] as number);
    east[node] = (fitted.nodes[PER_NODE * node + 1] as number) / cellM + (out[1] as number);
    north[node] = (fitted.nodes[PER_NODE * node + 2] as number) / cellM + (out[2] as number);
  }
  return hermiteGrid({ originEastM, originNorthM, cellM, columns, rows }, heights, east, north);
}
