import type { PlanePoint } from '../geometry/points.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { type DoubtScale, doubtScale } from './doubtScale.ts';
import { evidenceOf, fillers, sandAt } from './evidence.ts';
import { foldsAlong } from './folds.ts';
import { withGreenLeeway } from './greenLeeway.ts';
import { gridOver, type GridShape, type GridSurface, hermiteGrid } from './hermiteGrid.ts';
import { fitPlate, type PlateFit } from './plateFit.ts';
import { plateHeight, plateOnGrid } from './plateShape.ts';
import { type ReadingFit, readingFits } from './readingFits.ts';
import { flatPolygon, insidePolygon } from './rings.ts';
import type { TerrainInput } from './terrainInput.ts';

export interface FitOptions {
  /** Spacing of the grid, metres. Default: 0.25, or coarser up to 0.5 and then more where the box is very large. */
  readonly cellM?: number;
  /** Level ground at height 0 instead of a refusal where there is no elevation evidence at all. */
  readonly flatWithoutEvidence?: boolean;
  /** Fixes how readily the ground bends instead of judging it from the evidence. */
  readonly bendingVariance?: number;
}

/** A surface fitted to evidence, with how well it fits. */
export interface FittedSurface extends GridSurface {
  readonly readings: readonly ReadingFit[];
  /** Readings the surface does not pass within accuracy, worst first. */
  readonly disagreements: readonly ReadingFit[];
  /** The fit itself, from which doubt is computed; null for ground assumed level. */
  readonly plate: PlateFit | null;
  /** How much rougher (over 1) or smoother the ground about a place is than the whole: a factor on its doubt. */
  readonly doubtScale: DoubtScale;
  onGreen(at: PlanePoint): boolean;
  /** Height in closed form, without the grid. */
  exactHeight(eastM: number, northM: number): number;
}

const FINEST_CELL_M = 0.25;
const COARSE_CELL_M = 0.5;
/** Kernel evaluations a fit may take on its grid of twice that size: about a tenth of a second. */
const GRID_BUDGET = 4e6;
const MOST_NODES = 400_000;

/**
 * Fits one smooth surface to everything measured: the plate of least bending, hinged along break lines, that weighs each
 * height and slope reading by its accuracy. A plane is reproduced exactly; far from any evidence the ground tends to one.
 *
 * @throws InputProblem `green-without-elevation` where there is no evidence, `bad-reading` for a value that is no number
 */
export function fitSurface(input: TerrainInput, options: FitOptions = {}): FittedSurface {
  refuseNonsense(input);
  const evidence = evidenceOf(input);
  if (evidence.observations.length === 0) {
    if (options.flatWithoutEvidence !== true) throw withoutElevation(input);
    return levelGround(gridOver(input.extent, options.cellM ?? 1));
  }
  const measured = [...evidence.observations, ...fillers(evidence.observations)];
  const folds = foldsAlong(input.breaklines.map((line) => line.points));
  const greens = input.areas
    .filter(({ kind }) => kind === 'green')
    .map(({ polygon }) => flatPolygon(polygon));
  const onGreen = ({ eastM, northM }: PlanePoint): boolean =>
    greens.some((green) => insidePolygon(green, eastM, northM));
  const isMeasure = (reading: number): boolean => {
    const kind = evidence.readings[reading]?.kind;
    return kind === 'height' || kind === 'grid';
  };
  const asOne = fitPlate(measured, folds, options.bendingVariance);
  const observations = withGreenLeeway(measured, asOne, isMeasure, onGreen);
  const plate = observations === measured ? asOne : fitPlate(observations, folds, asOne.bendingVariance);
  const cellM = options.cellM ?? affordableCell(input.extent, plate.centres.length / 3 + 4 * folds.count);
  const surface = plateOnGrid(plate, input.extent, cellM);
  const readings = readingFits(
    evidence,
    observations,
    folds,
    plate,
    (at) => greens.length === 0 || onGreen(at),
    options.bendingVariance,
  );
  return {
    ...surface,
    readings,
    disagreements: readings
      .filter((r) => r.verdict !== 'agrees')
      .sort((a, b) => Math.abs(b.othersDiffer) / b.accuracy - Math.abs(a.othersDiffer) / a.accuracy),
    plate,
    doubtScale: doubtScale(observations, plate, isMeasure, onGreen),
    onGreen,
    exactHeight: (eastM, northM) => plateHeight(plate, eastM, northM),
  };
}

/**
 * All that `fitSurface` makes of an input, as data to compare: the readings, the break lines, the box, where the greens lie
 * and how deep in sand a height was read. Names and other cover do not come into a fit.
 */
export function whatIsFitted(input: TerrainInput): unknown {
  const { heights, slopes, grids = [], planes = [], breaklines, contours, extent, areas } = input;
  const greens = areas.filter(({ kind }) => kind === 'green').map(({ polygon }) => polygon);
  const sunkBy = sandAt(areas);
  const sunk = [...heights, ...grids.flatMap(({ nodes }) => nodes)].map(({ at }) => sunkBy(at));
  return {
    heights,
    slopes,
    grids,
    planes,
    breaklines,
    contours,
    extent,
    greens,
    sunk: sunk.some((m) => m !== 0) ? sunk : [],
  };
}

function affordableCell(extent: TerrainInput['extent'], centres: number): number {
  const area = (extent.eastM - extent.westM) * (extent.northM - extent.southM);
  const cost = (cellM: number): number => (area / (4 * cellM * cellM)) * centres;
  if (cost(FINEST_CELL_M) <= GRID_BUDGET) return FINEST_CELL_M;
  const fitting = Math.sqrt((area * centres) / (4 * GRID_BUDGET));
  const most = Math.sqrt(area / MOST_NODES);
  return Math.max(Math.min(fitting, COARSE_CELL_M), most);
}

function levelGround(shape: GridShape): FittedSurface {
  const zero = (): Float64Array => new Float64Array(shape.columns * shape.rows);
  return {
    ...hermiteGrid(shape, zero(), zero(), zero()),
    readings: [],
    disagreements: [],
    plate: null,
    doubtScale: () => 1,
    onGreen: () => false,
    exactHeight: () => 0,
  };
}

function withoutElevation(input: TerrainInput): InputProblem {
  const green = input.areas.find((area) => area.kind === 'green');
  return new InputProblem(
    'green-without-elevation',
    'There is nothing that says how high this ground is.',
    green === undefined ? '' : `green "${green.name === '' ? green.id : green.name}"`,
    'Add spot heights, slope readings or a contour, or say that it is level.',
  );
}

function refuseNonsense(input: TerrainInput): void {
  const sound = (...values: readonly number[]): boolean => values.every(Number.isFinite);
  const { westM, southM, eastM, northM } = input.extent;
  if (!sound(westM, southM, eastM, northM) || eastM <= westM || northM <= southM) {
    throw new InputProblem('bad-extent', 'The box to fit has no size.', '', 'Trace at least one area.');
  }
  const refuse = (place: string): never => {
    throw new InputProblem(
      'bad-reading',
      'This is not a number.',
      place,
      'Correct it or delete the reading.',
    );
  };
  for (const h of input.heights) {
    if (!sound(h.at.eastM, h.at.northM, h.heightM, h.accuracyM)) refuse(`spot height "${h.id}"`);
  }
  for (const s of input.slopes) {
    if (!sound(s.at.eastM, s.at.northM, s.slopePct, s.downhillBearingDeg, s.accuracyPct)) {
      refuse(`slope reading "${s.id}"`);
    }
  }
  for (const g of input.grids ?? []) {
    if (!sound(g.accuracyM) || g.nodes.some(({ at, heightM }) => !sound(at.eastM, at.northM, heightM))) {
      refuse(`elevation grid "${g.id}"`);
    }
  }
  for (const p of input.planes ?? []) {
    if (
      !sound(p.at.eastM, p.at.northM, p.reachM, p.slopePct, p.downhillBearingDeg, p.accuracyPct) ||
      p.reachM <= 0
    ) {
      refuse(`plane by eye "${p.id}"`);
    }
  }
  for (const c of input.contours) {
    if (!sound(c.heightM, ...c.points.flatMap((p) => [p.eastM, p.northM]))) refuse(`contour "${c.id}"`);
  }
}
