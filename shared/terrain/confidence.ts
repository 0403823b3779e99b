import type { PlanePoint } from '../geometry/points.ts';
import { LEVEL_LENGTH_M } from './evidence.ts';
import type { FittedSurface } from './fitSurface.ts';
import type { GridShape } from './hermiteGrid.ts';
import type { PlateFit, Target } from './plateFit.ts';

/** Doubt about the ground at a point: one standard deviation of each. Infinite where the ground was only assumed. */
export interface GroundDoubt {
  readonly heightSdM: number;
  /** Of the slope in any one direction, read over the length of a level (0.6 m). */
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
  const scale = surface.doubtScale(at.eastM, at.northM);
  const here = (target: Target): number => {
    const readings = plate.readingVariance(target);
    return readings + scale * scale * Math.max(0, variance(plate, target) - readings);
  };
  const slopes = here(slopeTarget(plate, at, 'east')) + here(slopeTarget(plate, at, 'north'));
  return {
    heightSdM: Math.sqrt(here(heightTarget(plate, at))),
    slopeSdPct: 100 * Math.sqrt(slopes / 2),
  };
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

/** The slope towards one side over a length, as a level of that length reads it. */
export function slopeTarget(
  plate: PlateFit,
  at: PlanePoint,
  towards: 'east' | 'north',
  lengthM: number = LEVEL_LENGTH_M,
): Target {
  const x = towards === 'east' ? lengthM / 2 : 0;
  const y = towards === 'north' ? lengthM / 2 : 0;
  const per = 1 / lengthM;
  return plate.target([at.eastM + x, at.northM + y, per, at.eastM - x, at.northM - y, -per]);
}

/** Never negative, which rounding could make it where a reading fixes the ground. */
export const variance = (plate: PlateFit, target: Target): number =>
  Math.max(0, plate.covariance(target, target));
