import { InputProblem } from '../../words/inputProblem.ts';
import { latin1Text } from '../decodedText.ts';
import { MOST_GRID_BYTES, MOST_TEXT_BYTES, refuseLarge } from './limits.ts';

/** Formats that can be read. */
export type FileFormat =
  'geojson' | 'overpass' | 'osm' | 'gpx' | 'kml' | 'kmz' | 'csv' | 'geotiff' | 'asciiGrid';

/** How much of a file shows what it is. */
export const HEAD_BYTES = 4096;

/**
 * The format by what the first bytes show; the name decides only between texts that look alike.
 * @throws InputProblem `foreign-file` where it is none of them
 */
export function formatOf(fileName: string, content: Uint8Array): FileFormat {
  const ending = /\.([A-Za-z0-9]+)$/.exec(fileName)?.[1]?.toLowerCase() ?? '';
  const start = latin1Text(content.subarray(0, HEAD_BYTES)).replace(/^\u00ef\u00bb\u00bf/, '');
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

/** Refuses a file by its size, before it is read. @throws InputProblem `file-too-large` */
export function refuseSize(format: FileFormat, bytes: number, fileName: string): void {
  const grid = format === 'geotiff' || format === 'asciiGrid';
  refuseLarge(bytes, fileName, grid ? MOST_GRID_BYTES : MOST_TEXT_BYTES);
}
