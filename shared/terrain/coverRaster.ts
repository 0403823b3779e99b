import { type Cover, coverCode } from '../words/vocabulary.ts';
import { type FlatPolygon, flatPolygon } from './rings.ts';
import type { TerrainArea, TerrainInput } from './terrainInput.ts';

/** What covers ground that no area was traced over. */
export const DEFAULT_COVER: Cover = 'lightRough';

/**
 * Which of two overlapping areas shows: the later one here, whatever order they were drawn in. Mown ground lies inside
 * what is mown less, a green inside its surrounds; sand, paths and bare patches interrupt turf; and what the Rules set
 * apart (penalty areas, out of bounds) goes over everything.
 */
export const coverPrecedence: readonly Cover[] = [
  'lightRough',
  'heavyRough',
  'fairway',
  'approach',
  'fringe',
  'tee',
  'green',
  'bare',
  'path',
  'bunker',
  'penaltyArea',
  'outOfBounds',
];

/** Cells of codes, row by row from the south-west corner. */
interface Raster<Codes> {
  readonly westM: number;
  readonly southM: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  readonly codes: Codes;
}

/** Of cover codes. */
export type CoverRaster = Raster<Uint8Array>;

const CELL_M = 0.125;
const MOST_CELLS = 4_000_000;

/** Draws the areas of a complex into cells of 0.125 m (coarser only for very large boxes); a cell has the cover of its middle. */
export function rasterCover(input: TerrainInput): CoverRaster {
  const raster = emptyRaster(input.extent, coverCode(DEFAULT_COVER));
  const ordered = input.areas
    .filter((area): area is TerrainArea & { readonly kind: Cover } => area.kind !== 'tree')
    .map((area) => ({ area, rank: coverPrecedence.indexOf(area.kind) }))
    .sort((a, b) => a.rank - b.rank);
  for (const { area } of ordered) fillPolygon(raster, flatPolygon(area.polygon), coverCode(area.kind));
  return raster;
}

export function emptyRaster(extent: TerrainInput['extent'], fill: number): CoverRaster {
  const width = extent.eastM - extent.westM;
  const height = extent.northM - extent.southM;
  const cellM = Math.max(CELL_M, Math.sqrt((width * height) / MOST_CELLS));
  const columns = Math.max(1, Math.ceil(width / cellM));
  const rows = Math.max(1, Math.ceil(height / cellM));
  return {
    westM: extent.westM,
    southM: extent.southM,
    cellM,
    columns,
    rows,
    codes: new Uint8Array(columns * rows).fill(fill),
  };
}

/** Sets every cell whose middle lies in the polygon (even-odd). */
export function fillPolygon(
  raster: Raster<Uint8Array | Uint16Array | Uint32Array>,
  polygon: FlatPolygon,
  code: number,
): void {
  const { westM, southM, cellM, columns, rows, codes } = raster;
  const crossings: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const y = southM + (row + 0.5) * cellM;
    crossings.length = 0;
    for (const ring of polygon) {
      let j = ring.length - 2;
      for (let i = 0; i < ring.length; i += 2) {
        const yi = ring[i + 1] as number;
        const yj = ring[j + 1] as number;
        if (yi > y !== yj > y) {
          const xi = ring[i] as number;
          crossings.push(xi + ((y - yi) / (yj - yi)) * ((ring[j] as number) - xi));
        }
        j = i;
      }
    }
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(((crossings[k] as number) - westM) / cellM - 0.5));
      const to = Math.min(columns, Math.ceil(((crossings[k + 1] as number) - westM) / cellM - 0.5));
      if (to > from) codes.fill(code, row * columns + from, row * columns + to);
    }
  }
}

/** Code of the cell at a point; `outside` beyond the raster. Allocates nothing. */
export function codeAt(raster: CoverRaster, eastM: number, northM: number, outside: number): number {
  const column = Math.floor((eastM - raster.westM) / raster.cellM);
  const row = Math.floor((northM - raster.southM) / raster.cellM);
  if (column >= 0 && column < raster.columns && row >= 0 && row < raster.rows) {
    return raster.codes[row * raster.columns + column] as number;
  }
  return outside;
}
