import { lonLat, type LonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { childrenNamed, readXml, textOfChild, type XmlElement } from '../xml/readXml.ts';
import { MOST_POSITIONS, textOf, tooMany } from './limits.ts';
import type { MapContent, MapFeature } from './mapFeature.ts';

/** GPX 1.0 and 1.1: waypoints, routes and the segments of tracks. Throws InputProblem. */
export function readGpx(content: Uint8Array, fileName: string): MapContent {
  const root = readXml(textOf(content, fileName), fileName);
  if (root.name !== 'gpx')
    throw new InputProblem('foreign-file', 'this XML is not GPX.', fileName, 'Choose another file.');
  const features: MapFeature[] = [];
  let positions = 0;
  const at = (point: XmlElement): LonLat => {
    positions += 1;
    if (positions > MOST_POSITIONS) throw tooMany('points', MOST_POSITIONS, fileName);
    const [lon, lat] = [Number(point.attributes['lon'] ?? NaN), Number(point.attributes['lat'] ?? NaN)];
    if (!Number.isFinite(lon) || !Number.isFinite(lat))
      throw new InputProblem(
        'bad-position',
        'a point has no longitude and latitude.',
        `${fileName}, line ${String(point.line)}`,
        'Export the file again.',
      );
    return lonLat(lon, lat);
  };
  const tagsOf = (element: XmlElement): ReadonlyMap<string, string> =>
    new Map(
      ['type', 'sym', 'desc', 'cmt'].flatMap((key) => {
        const value = textOfChild(element, key);
        return value === '' ? [] : [[`gpx:${key}`, value] as const];
      }),
    );
  const placeOf = (what: string, i: number, name: string): string =>
    `${what} ${String(i + 1)}${name === '' ? '' : ` “${name}”`}`;
  childrenNamed(root, 'wpt').forEach((point, i) => {
    const name = textOfChild(point, 'name');
    const elevation = Number.parseFloat(textOfChild(point, 'ele'));
    features.push({
      id: `wpt${String(i + 1)}`,
      place: placeOf('waypoint', i, name),
      name,
      tags: tagsOf(point),
      geometry: { kind: 'point', at: at(point), elevationM: Number.isFinite(elevation) ? elevation : null },
    });
  });
  const line = (id: string, place: string, element: XmlElement, points: readonly XmlElement[]): void => {
    if (points.length === 0) return;
    features.push({
      id,
      place,
      name: textOfChild(element, 'name'),
      tags: tagsOf(element),
      geometry: { kind: 'line', positions: points.map(at) },
    });
  };
  childrenNamed(root, 'rte').forEach((route, i) =>
    line(
      `rte${String(i + 1)}`,
      placeOf('route', i, textOfChild(route, 'name')),
      route,
      childrenNamed(route, 'rtept'),
    ),
  );
  childrenNamed(root, 'trk').forEach((track, i) =>
    childrenNamed(track, 'trkseg').forEach((segment, s) =>
      line(
        `trk${String(i + 1)}.${String(s + 1)}`,
        placeOf('track', i, textOfChild(track, 'name')),
        track,
        childrenNamed(segment, 'trkpt'),
      ),
    ),
  );
  const metadata = root.children.find(({ name }) => name === 'metadata');
  const copyright = metadata?.children.find(({ name }) => name === 'copyright');
  return {
    format: 'GPX',
    features,
    leftOut: [],
    warnings: [],
    attribution: copyright?.attributes['author'] ?? '',
    licence: copyright === undefined ? '' : textOfChild(copyright, 'license'),
    idPrefix: null,
    walked: true,
  };
}
