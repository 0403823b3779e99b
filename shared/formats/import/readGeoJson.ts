import { lonLat, type LonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { parseJson } from '../jsonText.ts';
import { leftOutList } from './leftOutList.ts';
import { MOST_FEATURES, MOST_POSITIONS, textOf, tooMany } from './limits.ts';
import type { MapContent, MapFeature, MapGeometry } from './mapFeature.ts';

type Members = Readonly<Record<string, unknown>>;
const isMembers = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** GeoJSON (RFC 7946) from anywhere: a FeatureCollection, a Feature or a bare geometry. Throws InputProblem. */
export function readGeoJson(content: Uint8Array, fileName: string): MapContent {
  const root = parseJson(textOf(content, fileName), fileName);
  if (!isMembers(root) || typeof root['type'] !== 'string')
    throw new InputProblem('foreign-file', 'this JSON is not GeoJSON.', fileName, 'Choose another file.');
  if (isMembers(root['swale']))
    throw new InputProblem(
      'own-atlas',
      'this is an atlas of Swale itself, not map data.',
      fileName,
      'Open it; or export it as GeoJSON and import that.',
    );
  refuseOtherCrs(root, fileName);
  const list =
    root['type'] === 'FeatureCollection' && Array.isArray(root['features'])
      ? (root['features'] as readonly unknown[])
      : [root['type'] === 'Feature' ? root : { type: 'Feature', geometry: root, properties: {} }];
  if (list.length > MOST_FEATURES) throw tooMany('features', MOST_FEATURES, fileName);
  const leftOut = leftOutList();
  const features: MapFeature[] = [];
  let positions = 0;
  const read = (pair: unknown, place: string): LonLat => {
    positions += 1;
    if (positions > MOST_POSITIONS) throw tooMany('positions', MOST_POSITIONS, fileName);
    const [lon, lat] = Array.isArray(pair) ? (pair as readonly unknown[]) : [];
    if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat))
      throw new InputProblem(
        'bad-position',
        'a position is not two numbers.',
        `${fileName}, ${place}`,
        'Export the file again.',
      );
    return lonLat(lon, lat);
  };
  list.forEach((feature, i) => {
    const properties = isMembers(feature) && isMembers(feature['properties']) ? feature['properties'] : {};
    const name = typeof properties['name'] === 'string' ? properties['name'] : '';
    const place = `feature ${String(i + 1)}${name === '' ? '' : ` “${name}”`}`;
    const geometry = isMembers(feature) ? feature['geometry'] : null;
    if (!isMembers(geometry)) {
      leftOut.add('features without a geometry', 'They have no place on the map.', place);
      return;
    }
    const tags = new Map(
      Object.entries(properties).flatMap(([key, value]) =>
        typeof value === 'string' || typeof value === 'number' ? [[key, String(value)] as const] : [],
      ),
    );
    partsOf(geometry, place, read, (what) =>
      leftOut.add(what, 'An atlas has no place for them.', place),
    ).forEach((part, p) =>
      features.push({
        id: `f${String(i + 1)}${p === 0 ? '' : `.${String(p + 1)}`}`,
        place,
        name,
        tags,
        geometry: part,
      }),
    );
  });
  const said = (key: string): string => {
    const value = root[key] ?? (isMembers(root['metadata']) ? root['metadata'][key] : undefined);
    return typeof value === 'string' ? value : '';
  };
  return {
    format: 'GeoJSON',
    features,
    leftOut: leftOut.list(),
    warnings: [],
    attribution: said('attribution') || said('copyright'),
    licence: said('licence') || said('license'),
    idPrefix: null,
    walked: false,
  };
}

function partsOf(
  geometry: Members,
  place: string,
  read: (pair: unknown, place: string) => LonLat,
  leaveOut: (what: string) => void,
): readonly MapGeometry[] {
  const { type, coordinates } = geometry;
  const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as unknown[]) : []);
  const line = (value: unknown): readonly LonLat[] => list(value).map((pair) => read(pair, place));
  const polygon = (value: unknown): readonly (readonly LonLat[])[] =>
    list(value).map((ring) => opened(line(ring)));
  const point = (value: unknown): MapGeometry => {
    const elevation = list(value)[2];
    return {
      kind: 'point',
      at: read(value, place),
      elevationM: typeof elevation === 'number' ? elevation : null,
    };
  };
  switch (type) {
    case 'Point':
      return [point(coordinates)];
    case 'MultiPoint':
      return list(coordinates).map(point);
    case 'LineString':
      return [{ kind: 'line', positions: line(coordinates) }];
    case 'MultiLineString':
      return list(coordinates).map((part) => ({ kind: 'line' as const, positions: line(part) }));
    case 'Polygon':
      return [{ kind: 'areas', polygons: [polygon(coordinates)] }];
    case 'MultiPolygon':
      return [{ kind: 'areas', polygons: list(coordinates).map(polygon) }];
    default:
      leaveOut(type === 'GeometryCollection' ? 'geometry collections' : 'features of an unknown geometry');
      return [];
  }
}

/** A ring without its repeated end. */
export function opened(ring: readonly LonLat[]): readonly LonLat[] {
  const [first, last] = [ring[0], ring.at(-1)];
  return ring.length > 1 && first?.[0] === last?.[0] && first?.[1] === last?.[1] ? ring.slice(0, -1) : ring;
}

/** Older GeoJSON could name another system; RFC 7946 knows WGS 84 alone. */
function refuseOtherCrs(root: Members, fileName: string): void {
  const crs = root['crs'];
  const name = isMembers(crs) && isMembers(crs['properties']) ? crs['properties']['name'] : undefined;
  if (typeof name !== 'string' || /CRS:?84|EPSG:+(\d*:)?4326$/i.test(name)) return;
  throw new InputProblem(
    'other-projection',
    `its positions are in ${name}, not WGS 84 longitude and latitude.`,
    fileName,
    'Export it again as WGS 84 (EPSG:4326).',
  );
}
