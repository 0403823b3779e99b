import type { LonLat } from '../../geometry/points.ts';
import type { ElevationRaster, RasterWindow } from './elevationRaster.ts';

/** Part of a raster as an atlas keeps it: rows from the bottom, nodes averaged where the raster is finer than of use. */
export interface GridTile {
  readonly columns: number;
  readonly rows: number;
  /** South-west, south-east, north-east, north-west as rows and columns lie. */
  readonly corners: readonly [LonLat, LonLat, LonLat, LonLat];
  /** In metres; null where the raster has none. */
  readonly heightsM: readonly (number | null)[];
  readonly known: number;
}

/** Cuts a window, averaging `every` x `every` cells into one node; null where that leaves less than two by two. */
export async function cutTile(
  raster: ElevationRaster,
  window: RasterWindow,
  every: number,
): Promise<GridTile | null> {
  const columns = Math.floor((window.right - window.left) / every);
  const rows = Math.floor((window.bottom - window.top) / every);
  if (columns < 2 || rows < 2) return null;
  const width = columns * every;
  const values = await raster.read({
    left: window.left,
    top: window.top,
    right: window.left + width,
    bottom: window.top + rows * every,
  });
  const heightsM: (number | null)[] = [];
  let known = 0;
  for (let row = rows - 1; row >= 0; row -= 1)
    for (let column = 0; column < columns; column += 1) {
      let sum = 0;
      let count = 0;
      for (let j = 0; j < every; j += 1)
        for (let i = 0; i < every; i += 1) {
          const value = values[(row * every + j) * width + column * every + i] ?? NaN;
          if (!Number.isNaN(value)) {
            sum += value;
            count += 1;
          }
        }
      // A node of which less than half is known would stand for ground beside it.
      const has = 2 * count >= every * every;
      known += has ? 1 : 0;
      heightsM.push(has ? Math.round((sum / count) * raster.metresPerUnit * 1e4) / 1e4 : null);
    }
  const half = (every - 1) / 2;
  const at = (column: number, row: number): LonLat => {
    const [x, xc, xr, y, yc, yr] = raster.affine;
    const c = window.left + column * every + half;
    const r = window.top + row * every + half;
    return raster.system.toLonLat(x + xc * c + xr * r, y + yc * c + yr * r);
  };
  return {
    columns,
    rows,
    corners: [at(0, rows - 1), at(columns - 1, rows - 1), at(columns - 1, 0), at(0, 0)],
    heightsM,
    known,
  };
}
