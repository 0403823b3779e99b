import type { PlanePoint } from '../geometry/points.ts';
import type { FittedSurface } from './fitSurface.ts';
import type { GridShape } from './hermiteGrid.ts';
import type { Target } from './plateDoubt.ts';
import type { PlateFit } from './plateFit.ts';

/** The slope that doubt is stated of is the rise over this length, about a pace: metres. */
export const SLOPE_BASELINE_M = 1;
/**
 * Turf has no bends shorter than this, metres, which the random plate of the fit has: what the ground may do between readings
 * tilts it over this length as a whole. A bank or rough ground bends shorter than a green. Computed: the checks of the
 * invented greens, tests/published/doubt.checks.ts.
 */
const SHORTEST_BEND_M = { green: 2.5, elsewhere: 1.5 } as const;

/** Doubt about the ground at a point: one standard deviation of each. Infinite where the ground was only assumed. */
export interface GroundDoubt {
  readonly heightSdM: number;
  /** Of the slope in any one direction, over `SLOPE_BASELINE_M` (1 m). */
  readonly slopeSdPct: number;
}

/**
 * How well the evidence fixes the ground at a point: the posterior of the fit, which takes the ground for a random plate as
 * stiff as the readings make it look and each reading for as good as it was said to be. What the ground may do between the
 * readings is scaled by how rough it is just there (`doubtScale`).
 */
export function doubtAt(surface: FittedSurface, at: PlanePoint): GroundDoubt {
  const { plate } = surface;
  if (plate === null) return { heightSdM: Infinity, slopeSdPct: Infinity };
  const { readings, between } = plate.parts(heightTarget(plate, at));
  const scale = surface.doubtScale(at.eastM, at.northM, between);
  const bendM = SHORTEST_BEND_M[surface.onGreen(at) ? 'green' : 'elsewhere'];
  const slopeVariance = (towards: 'east' | 'north'): number => {
    const felt = plate.parts(slopeTarget(plate, at, towards, SLOPE_BASELINE_M));
    const bend = plate.parts(slopeTarget(plate, at, towards, bendM));
    // A slope read just here leaves less open over the pace than over the bend.
    return felt.readings + scale * scale * Math.min(felt.between, bend.between);
  };
  return {
    heightSdM: Math.sqrt(readings + scale * scale * between),
    slopeSdPct: 100 * Math.sqrt((slopeVariance('east') + slopeVariance('north')) / 2),
  };
}

/** The factor on what the plate leaves open of the ground at a place. */
export function doubtScaleAt(surface: FittedSurface, plate: PlateFit, at: PlanePoint): number {
  return surface.doubtScale(at.eastM, at.northM, plate.parts(heightTarget(plate, at)).between);
}

/** Errors of the readings, and what the ground may do between them as rough as it is here. */
export function heightVariance(surface: FittedSurface, plate: PlateFit, at: PlanePoint): number {
  const { readings, between } = plate.parts(heightTarget(plate, at));
  const scale = surface.doubtScale(at.eastM, at.northM, between);
  return readings + scale * scale * between;
}

/** Doubt at the nodes of a grid, row by row from the south-west. About 1 m between nodes shows all there is to see. */
export function doubtGrid(
  surface: FittedSurface,
  shape: GridShape,
): { readonly heightSdM: Float64Array; readonly slopeSdPct: Float64Array } {
  const heightSdM = new Float64Array(shape.columns * shape.rows);
  const slopeSdPct = new Float64Array(heightSdM.length);
  for (let i = 0; i < heightSdM.length; i += 1) {
    const column = i % shape.columns;
    const doubt = doubtAt(surface, {
      eastM: shape.originEastM + column * shape.cellM,
      northM: shape.originNorthM + ((i - column) / shape.columns) * shape.cellM,
    });
    heightSdM[i] = doubt.heightSdM;
    slopeSdPct[i] = doubt.slopeSdPct;
  }
  return { heightSdM, slopeSdPct };
}

export const heightTarget = (plate: PlateFit, at: PlanePoint): Target =>
  plate.target([at.eastM, at.northM, 1]);

/** The slope towards one side as the rise over a length. */
export function slopeTarget(
  plate: PlateFit,
  at: PlanePoint,
  towards: 'east' | 'north',
  lengthM: number,
): Target {
  const x = towards === 'east' ? lengthM / 2 : 0;
  const y = towards === 'north' ? lengthM / 2 : 0;
  const per = 1 / lengthM;
  return plate.target([at.eastM + x, at.northM + y, per, at.eastM - x, at.northM - y, -per]);
}

/** Never negative, which rounding could make it where a reading fixes the ground. */
export const variance = (plate: PlateFit, target: Target): number =>
  Math.max(0, plate.covariance(target, target));
