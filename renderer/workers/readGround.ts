import type { PlanePoint, PlanePolygon } from '../../shared/geometry/points.ts';
import { groundRelief } from '../../shared/plate/groundRelief.ts';
import type { ReliefDrawing } from '../../shared/plate/relief.ts';
import { doubtAt } from '../../shared/terrain/confidence.ts';
import { type FittedSurface, fitSurface } from '../../shared/terrain/fitSurface.ts';
import { flagGround } from '../../shared/terrain/flagGround.ts';
import type { GridShape } from '../../shared/terrain/hermiteGrid.ts';
import { type MeasureHere, measureNext, slopesAt } from '../../shared/terrain/measureNext.ts';
import { placesOver } from '../../shared/terrain/placesOver.ts';
import type { ReadingFit } from '../../shared/terrain/readingFits.ts';
import { surveyedGround } from '../../shared/terrain/surveyedGround.ts';
import type { TerrainInput } from '../../shared/terrain/terrainInput.ts';
import { waterLines } from '../../shared/terrain/waterLines.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

/** What is to be seen of the ground. */
export interface GroundLook {
  readonly slopes: boolean;
  readonly arrows: boolean;
  readonly water: boolean;
  /** Ground a flag can fairly stand on at a green speed. */
  readonly fair: boolean;
  readonly stimpFt: number;
  /** Heights between contours, metres. */
  readonly contourM: number;
}

export interface GroundQuestion {
  /** Names what the ground is fitted to. */
  readonly groundKey: string;
  readonly look: GroundLook;
  readonly input: TerrainInput;
  readonly greens: readonly PlanePolygon[];
  readonly ridgeIds: readonly string[];
  readonly units: UnitsPreference;
  readonly heavyOnly: boolean;
}

/** The ground as read from its evidence: plain data, so that it can come from another thread. */
export interface GroundRead {
  readonly shape: GridShape;
  /** Height and slopes at the nodes of the grid. */
  readonly heightsM: Float64Array;
  readonly riseEast: Float64Array;
  readonly riseNorth: Float64Array;
  readonly relief: Omit<ReliefDrawing, 'downhillAt'>;
  readonly readings: readonly ReadingFit[];
  /** Root mean square of the doubt over the greens; null without a green. */
  readonly doubt: { readonly heightSdM: number; readonly slopeSdPct: number } | null;
  /** Where one more height would help most, best first, with the share of the doubt it takes away. */
  readonly measureNext: readonly MeasureHere[];
}

const LATTICE_M = 1.5;
const MOST_PLACES = 150;
const ARROW_SPACING_M = 2;
const WATER_SPACING_M = 2;
const FAIR_SPACING_M = 1;
const MOST_FAIR = 2000;

/** Of the last ground only: another way to look at it needs no new fit. */
let last: { readonly key: string; readonly fitted: Fitted } | null = null;

type Fitted = Pick<GroundRead, 'doubt' | 'measureNext'> & { readonly surface: FittedSurface };

/** Fits the ground, unless the question before was of the same, and says how sure it is. Throws InputProblem as `fitSurface` does. */
export function readGround(question: GroundQuestion): GroundRead {
  const { input, greens, ridgeIds, units, heavyOnly, look } = question;
  if (last?.key !== question.groundKey) {
    const surface = fitSurface(input);
    const places = latticeOver(greens, LATTICE_M, MOST_PLACES);
    const fitted = {
      surface,
      doubt: meanDoubt(surface, places),
      measureNext: measureNext(surface, slopesAt(places), places),
    };
    last = { key: question.groundKey, fitted };
  }
  const { surface, doubt, measureNext: spots } = last.fitted;
  const lines = input.breaklines.map(({ id, points }) => ({
    kind: ridgeIds.includes(id) ? ('ridge' as const) : ('tierEdge' as const),
    points,
  }));
  const relief = groundRelief(surface, greens, lines, {
    units,
    arrowSpacingM: look.arrows ? ARROW_SPACING_M : 1000,
    heavyOnly,
    contourM: look.contourM,
  });
  const { originEastM, originNorthM, cellM, columns, rows } = surface;
  const shape = { originEastM, originNorthM, cellM, columns, rows };
  return {
    shape,
    ...slopesAtNodes(surface, shape),
    relief: {
      greens: relief.greens,
      slopeClasses: look.slopes ? relief.slopeClasses : [],
      contours: relief.contours,
      arrows: look.arrows ? relief.arrows : [],
      lines: relief.lines,
      water: look.water ? greens.flatMap((green) => waterLines(surface, green, WATER_SPACING_M)) : [],
      fair: look.fair ? fairPlaces(surface, input, greens, look.stimpFt) : [],
    },
    readings: surface.readings,
    doubt,
    measureNext: spots,
  };
}

function fairPlaces(
  surface: FittedSurface,
  input: TerrainInput,
  greens: readonly PlanePolygon[],
  stimpFt: number,
): readonly PlanePoint[] {
  const ground = surveyedGround(surface, input);
  return latticeOver(greens, FAIR_SPACING_M, MOST_FAIR).filter(
    (at) => flagGround(ground, at, stimpFt).faults.length === 0,
  );
}

function slopesAtNodes(
  surface: FittedSurface,
  { originEastM, originNorthM, cellM, columns, rows }: GridShape,
): Pick<GroundRead, 'heightsM' | 'riseEast' | 'riseNorth'> {
  const count = columns * rows;
  const heightsM = new Float64Array(count);
  const riseEast = new Float64Array(count);
  const riseNorth = new Float64Array(count);
  const out = new Float64Array(3);
  for (let i = 0; i < count; i += 1) {
    const column = i % columns;
    surface.sampleHeight(originEastM + column * cellM, originNorthM + ((i - column) / columns) * cellM, out);
    heightsM[i] = out[0] ?? NaN;
    riseEast[i] = out[1] ?? NaN;
    riseNorth[i] = out[2] ?? NaN;
  }
  return { heightsM, riseEast, riseNorth };
}

/** Places spread evenly over the greens, further apart where they would be too many. */
function latticeOver(greens: readonly PlanePolygon[], leastM: number, most: number): readonly PlanePoint[] {
  for (let spacing = leastM; ; spacing *= 1.25) {
    const places = greens.flatMap((green) => placesOver(green, spacing));
    if (places.length <= most) return places;
  }
}

function meanDoubt(surface: FittedSurface, places: readonly PlanePoint[]): GroundRead['doubt'] {
  if (places.length === 0 || surface.plate === null) return null;
  const sample = places.filter((_, i) => i % Math.ceil(places.length / 60) === 0);
  let height = 0;
  let slope = 0;
  for (const at of sample) {
    const { heightSdM, slopeSdPct } = doubtAt(surface, at);
    height += heightSdM * heightSdM;
    slope += slopeSdPct * slopeSdPct;
  }
  return {
    heightSdM: Math.sqrt(height / sample.length),
    slopeSdPct: Math.sqrt(slope / sample.length),
  };
}
