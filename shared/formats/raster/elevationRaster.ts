import type { ImportWarning } from '../import/importPreview.ts';
import type { CoordinateSystem } from './coordinateSystem.ts';

/** Columns and rows of a raster, the first ones included and the last ones not. */
export interface RasterWindow {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Heights on a grid as a file holds them: rows run from the top, each height stands at the middle of its cell. */
export interface ElevationRaster {
  readonly format: string;
  readonly columns: number;
  readonly rows: number;
  /** x = affine[0] + affine[1] column + affine[2] row, and y likewise from affine[3] on. */
  readonly affine: readonly [number, number, number, number, number, number];
  readonly system: CoordinateSystem;
  /** Metres in one of the file's units of height. */
  readonly metresPerUnit: number;
  /** Whether the file itself says what unit its heights are in. */
  readonly unitStated: boolean;
  /** Positions are in feet, so that heights in feet are likely too. */
  readonly positionsInFeet: boolean;
  readonly warnings: readonly ImportWarning[];
  /** Heights in the file's unit, row by row; NaN where there is none. */
  read(window: RasterWindow): Promise<Float64Array>;
}

export const METRES_PER_UNIT = { m: 1, ft: 0.3048, usft: 1200 / 3937 } as const;

/** Rasters beyond this are refused: no course needs more, and a false header can claim any size. */
export const MOST_CELLS = 400_000_000;
