import { writeArrayBuffer } from 'geotiff';
import type { SurfaceGrid } from './surfaceGrid.ts';

const NO_DATA = -9999;

/** GeoTIFF of 32-bit floats, one strip, heights at the middles of cells; heights are kept to 0.1 mm below 1000 m. */
export function writeGeoTiff(grid: SurfaceGrid): Uint8Array {
  const { columns, rows, cellM, westX, northY, heightsM } = grid;
  const values = Float32Array.from(heightsM, (height) => (Number.isNaN(height) ? NO_DATA : height));
  return new Uint8Array(
    writeArrayBuffer(values, {
      width: columns,
      height: rows,
      BitsPerSample: [32],
      SampleFormat: [3],
      SamplesPerPixel: 1,
      PhotometricInterpretation: 1,
      ModelPixelScale: [cellM, cellM, 0],
      ModelTiepoint: [0, 0, 0, westX - cellM / 2, northY + cellM / 2, 0],
      GTModelTypeGeoKey: 1,
      GTRasterTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: grid.epsg,
      GTCitationGeoKey: grid.system.name,
      GDAL_NODATA: String(NO_DATA),
    }),
  );
}
