import { emptyRaster, fillPolygon } from './coverRaster.ts';
import type { FlatPolygon } from './rings.ts';
import type { TerrainInput } from './terrainInput.ts';

/** Which bunker each cell of sand belongs to, counted from 1; of two that overlap, the later. However many there are. */
export function whichBunker(
  extent: TerrainInput['extent'],
  bunkers: readonly { readonly polygon: FlatPolygon }[],
): Uint16Array | Uint32Array {
  const raster = emptyRaster(extent, 0);
  const count = raster.codes.length;
  const codes = bunkers.length < 65_536 ? new Uint16Array(count) : new Uint32Array(count);
  bunkers.forEach(({ polygon }, i) => {
    fillPolygon({ ...raster, codes }, polygon, i + 1);
  });
  return codes;
}
