import { lonLat, type LonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { childrenNamed, readXml, textOfChild, type XmlElement } from '../xml/readXml.ts';
import { leftOutList } from './leftOutList.ts';
import { MOST_POSITIONS, textOf, tooMany } from './limits.ts';
import type { MapContent, MapFeature, MapGeometry } from './mapFeature.ts';
import { opened } from './readGeoJson.ts';

/** KML 2.2: placemarks in whatever folders, with the names of their folders as a hint. Throws InputProblem. */
export function readKml(content: Uint8Array, fileName: string): MapContent {
  const root = readXml(textOf(content, fileName), fileName);
  if (root.name !== 'kml')
    throw new InputProblem('foreign-file', 'this XML is not KML.', fileName, 'Choose another file.');
  const leftOut = leftOutList();
  const features: MapFeature[] = [];
  let positions = 0;
  let placemarks = 0;

  const coordinates = (element: XmlElement, place: string): readonly (readonly number[])[] =>
    textOfChild(element, 'coordinates')
      .split(/\s+/)
      .filter((part) => part !== '')
      .map((part) => {
        positions += 1;
        if (positions > MOST_POSITIONS) throw tooMany('positions', MOST_POSITIONS, fileName);
        const numbers = part.split(',').map(Number);
        if (numbers.length < 2 || !numbers.every(Number.isFinite))
          throw new InputProblem(
            'bad-position',
            `"${part.slice(0, 40)}" is not a longitude and a latitude.`,
            `${fileName}, ${place}, line ${String(element.line)}`,
            'Export the file again.',
          );
        return numbers;
      });
  const line = (element: XmlElement | undefined, place: string): readonly LonLat[] =>
    element === undefined
      ? []
      : coordinates(element, place).map(([lon = NaN, lat = NaN]) => lonLat(lon, lat));
  const geometries = (element: XmlElement, place: string): readonly MapGeometry[] =>
    element.children.flatMap((child): readonly MapGeometry[] => {
      switch (child.name) {
        case 'Point': {
          const [first] = coordinates(child, place);
          if (first === undefined) return [];
          const [lon = NaN, lat = NaN, height] = first;
          const clamped = !/absolute/i.test(textOfChild(child, 'altitudeMode'));
          return [{ kind: 'point', at: lonLat(lon, lat), elevationM: clamped ? null : (height ?? null) }];
        }
        case 'LineString':
        case 'LinearRing':
          return [{ kind: 'line', positions: line(child, place) }];
        case 'Polygon': {
          const ring = (boundary: XmlElement): readonly LonLat[] =>
            opened(line(childrenNamed(boundary, 'LinearRing')[0], place));
          const rings = [
            ...childrenNamed(child, 'outerBoundaryIs').slice(0, 1),
            ...childrenNamed(child, 'innerBoundaryIs'),
          ].map(ring);
          return [{ kind: 'areas', polygons: [rings] }];
        }
        case 'MultiGeometry':
          return geometries(child, place);
        case 'Model':
        case 'Track':
        case 'MultiTrack':
          leftOut.add(`${child.name} placemarks`, 'Only points, lines and polygons are read.', place);
          return [];
        default:
          return [];
      }
    });
  const walk = (element: XmlElement, folder: string): void => {
    for (const child of element.children) {
      if (child.name === 'Placemark') {
        placemarks += 1;
        const number = placemarks;
        const name = textOfChild(child, 'name');
        const place = `placemark ${String(number)}${name === '' ? '' : ` “${name}”`}`;
        geometries(child, place).forEach((geometry, g) =>
          features.push({
            id: `p${String(number)}${g === 0 ? '' : `.${String(g + 1)}`}`,
            place,
            name,
            tags: new Map([...(folder === '' ? [] : [['folder', folder] as const]), ...dataOf(child)]),
            geometry,
          }),
        );
      } else if (child.name === 'Document' || child.name === 'Folder')
        walk(child, child.name === 'Folder' ? textOfChild(child, 'name') : folder);
      else if (child.name === 'NetworkLink' || child.name.endsWith('Overlay'))
        leftOut.add(
          'links and overlays',
          'Nothing outside the file is fetched.',
          `line ${String(child.line)}`,
        );
    }
  };
  walk(root, '');
  return {
    format: 'KML',
    features,
    leftOut: leftOut.list(),
    warnings: [],
    attribution: authorOf(root),
    licence: '',
    idPrefix: null,
    walked: true,
  };
}

/** Plain values that a program has put beside a placemark. */
function dataOf(placemark: XmlElement): readonly (readonly [string, string])[] {
  return childrenNamed(placemark, 'ExtendedData').flatMap((extended) =>
    childrenNamed(extended, 'Data').map(
      (data) => [data.attributes['name'] ?? '', textOfChild(data, 'value')] as const,
    ),
  );
}

/** The author that Atom gives, as KML does. */
function authorOf(root: XmlElement): string {
  const document = root.children.find(({ name }) => name === 'Document') ?? root;
  const author = document.children.find(({ name }) => name === 'author');
  return author === undefined ? '' : textOfChild(author, 'name');
}
