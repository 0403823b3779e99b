import type { AtlasDocument } from '../../atlas/records.ts';
import type { LonLat } from '../../geometry/points.ts';
import { escapeXml, refuseUnplaced, titleOf } from './mapExport.ts';
import { type MapItem, mapItems } from './mapItems.ts';

/** KML 2.2, a folder for each kind. @throws InputProblem for an unplaced atlas */
export function writeKml(document: AtlasDocument, holeId: string | null = null): string {
  refuseUnplaced(document, 'KML');
  const { name, credits } = titleOf(document);
  const folders = new Map<string, MapItem[]>();
  for (const item of mapItems(document, holeId))
    folders.set(item.folder, [...(folders.get(item.folder) ?? []), item]);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<kml xmlns="http://www.opengis.net/kml/2.2">',
    '<Document>',
    `<name>${escapeXml(name)}</name>`,
    ...(credits === '' ? [] : [`<description>${escapeXml(credits)}</description>`]),
    ...[...folders].flatMap(([folder, items]) => [
      `<Folder><name>${escapeXml(folderWords(folder))}</name>`,
      ...items.map(placemark),
      '</Folder>',
    ]),
    '</Document>',
    '</kml>',
    '',
  ].join('\n');
}

function placemark({ name, properties, geometry }: MapItem): string {
  const data = Object.entries(properties)
    .map(([key, value]) => `<Data name="${escapeXml(key)}"><value>${escapeXml(String(value))}</value></Data>`)
    .join('');
  return `<Placemark><name>${escapeXml(name)}</name><ExtendedData>${data}</ExtendedData>${geometryText(geometry)}</Placemark>`;
}

function geometryText(geometry: MapItem['geometry']): string {
  const coordinates = (positions: readonly LonLat[]): string =>
    `<coordinates>${positions.map((at) => at.join(',')).join(' ')}</coordinates>`;
  switch (geometry.type) {
    case 'Point':
      return `<Point>${coordinates([geometry.at])}</Point>`;
    case 'LineString':
      return `<LineString><tessellate>1</tessellate>${coordinates(geometry.positions)}</LineString>`;
    case 'Polygon': {
      const rings = geometry.rings.map((ring, i) => {
        const side = i === 0 ? 'outerBoundaryIs' : 'innerBoundaryIs';
        return `<${side}><LinearRing>${coordinates([...ring, ...ring.slice(0, 1)])}</LinearRing></${side}>`;
      });
      return `<Polygon>${rings.join('')}</Polygon>`;
    }
  }
}

/** "heavyRough" as "heavy rough", which importing reads again. */
const folderWords = (folder: string): string =>
  folder.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
