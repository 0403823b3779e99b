import type { AtlasDocument } from '../../atlas/records.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { latin1Text } from '../decodedText.ts';
import { contentHash } from './contentHash.ts';
import type { ImportFile, ImportOptions, ImportPreview } from './importPreview.ts';
import { emptyFile } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { previewMap } from './previewMap.ts';

/** Formats that can be read, by what the content shows; the name of the file decides only between texts that look alike. */
type Format = 'geojson' | 'overpass' | 'osm' | 'gpx' | 'kml' | 'kmz' | 'csv' | 'geotiff' | 'asciiGrid';

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
  const format = formatOf(file);
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

function formatOf({ fileName, content }: ImportFile): Format {
  const ending = /\.([A-Za-z0-9]+)$/.exec(fileName)?.[1]?.toLowerCase() ?? '';
  const start = latin1Text(content.subarray(0, 4096)).replace(/^\u00ef\u00bb\u00bf/, '');
  if (/^(II|MM)/.test(start) && (/^(II[*+]|MM\0[*+])/.test(start) || /^tiff?$/.test(ending)))
    return 'geotiff';
  if (start.startsWith('PK')) return 'kmz';
  if (/^\s*(ncols|nrows)\s/i.test(start) || ending === 'asc') return 'asciiGrid';
  if (/^\s*[{[]/.test(start))
    return /"elements"\s*:/.test(start) || /"osm3s"|"generator"\s*:\s*"Overpass/.test(start)
      ? 'overpass'
      : 'geojson';
  if (/^\s*</.test(start)) {
    const root = /<(?:\w+:)?(osm|gpx|kml)[\s>/]/i.exec(start)?.[1]?.toLowerCase() ?? ending;
    if (root === 'osm' || root === 'gpx' || root === 'kml') return root;
  }
  switch (ending) {
    case 'tif':
    case 'tiff':
      return 'geotiff';
    case 'json':
    case 'geojson':
      return 'geojson';
    case 'osm':
    case 'gpx':
    case 'kml':
    case 'kmz':
      return ending;
    case 'csv':
    case 'txt':
    case 'tsv':
    case 'xyz':
      return 'csv';
    default:
      throw new InputProblem(
        'foreign-file',
        'this is none of the formats that can be imported.',
        fileName,
        'Choose GeoJSON, OpenStreetMap XML, Overpass JSON, GPX, KML, KMZ, CSV, GeoTIFF or an ESRI ASCII grid.',
      );
  }
}
