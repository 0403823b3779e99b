import type { AtlasDocument } from '../../atlas/records.ts';
import { contentHash } from './contentHash.ts';
import { formatOf } from './fileFormat.ts';
import type { ImportFile, ImportOptions, ImportPreview } from './importPreview.ts';
import { emptyFile } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { previewMap } from './previewMap.ts';

/**
 * What importing a file into an atlas would do. Nothing is changed. Each format's reader is loaded when it is needed.
 *
 * @throws InputProblem with the reason where nothing of it can be read
 */
export async function previewImport(
  document: AtlasDocument,
  file: ImportFile,
  options: ImportOptions = {},
): Promise<ImportPreview> {
  const { fileName, content } = file;
  if (content.length === 0) throw emptyFile(fileName);
  const hash = contentHash(content);
  const format = formatOf(fileName, content);
  const map = (read: MapContent): ImportPreview => previewMap(document, fileName, hash, read, options);
  switch (format) {
    case 'geojson':
      return map((await import('./readGeoJson.ts')).readGeoJson(content, fileName));
    case 'overpass':
      return map((await import('./readOverpassJson.ts')).readOverpassJson(content, fileName));
    case 'osm':
      return map((await import('./readOsmXml.ts')).readOsmXml(content, fileName));
    case 'gpx':
      return map((await import('./readGpx.ts')).readGpx(content, fileName));
    case 'kml':
      return map((await import('./readKml.ts')).readKml(content, fileName));
    case 'kmz':
      return map((await import('./readKmz.ts')).readKmz(content, fileName));
    case 'csv':
      return (await import('../csv/previewCsv.ts')).previewCsv(document, fileName, hash, content, options);
    case 'geotiff': {
      const [{ readGeoTiff }, { previewGrid }] = await Promise.all([
        import('../raster/readGeoTiff.ts'),
        import('../raster/previewGrid.ts'),
      ]);
      return previewGrid(document, fileName, hash, await readGeoTiff(content, fileName, options), options);
    }
    case 'asciiGrid': {
      const [{ readAsciiGrid }, { previewGrid }] = await Promise.all([
        import('../raster/readAsciiGrid.ts'),
        import('../raster/previewGrid.ts'),
      ]);
      const raster = readAsciiGrid(content, fileName, file.projection, options);
      return previewGrid(document, fileName, hash, raster, options);
    }
  }
}
