import { utmWkt } from '../raster/coordinateSystem.ts';
import type { SurfaceGrid } from './surfaceGrid.ts';

const NO_DATA = -9999;

/** ESRI ASCII grid to a tenth of a millimetre, with the text of the .prj file that belongs beside it. */
export function writeAsciiGrid(grid: SurfaceGrid): { readonly text: string; readonly projection: string } {
  const { columns, rows, cellM, westX, northY, heightsM } = grid;
  const lines = [
    `ncols ${String(columns)}`,
    `nrows ${String(rows)}`,
    `xllcenter ${westX.toFixed(3)}`,
    `yllcenter ${(northY - cellM * (rows - 1)).toFixed(3)}`,
    `cellsize ${String(cellM)}`,
    `NODATA_value ${String(NO_DATA)}`,
  ];
  for (let row = 0; row < rows; row += 1)
    lines.push(
      Array.from(heightsM.subarray(row * columns, (row + 1) * columns), (height) =>
        Number.isNaN(height) ? String(NO_DATA) : height.toFixed(4),
      ).join(' '),
    );
  return { text: `${lines.join('\n')}\n`, projection: utmWkt(grid.epsg) };
}
