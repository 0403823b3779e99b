import type { AtlasDocument } from '../../atlas/records.ts';
import type { LonLat } from '../../geometry/points.ts';
import { type MapItem, mapItems } from './mapItems.ts';
import { refuseUnplaced, titleOf } from './mapExport.ts';

/** Plain GeoJSON for other programs (the atlas file keeps more). @throws InputProblem for an unplaced atlas */
export function writeGeoJson(document: AtlasDocument, holeId: string | null = null): string {
  refuseUnplaced(document, 'GeoJSON');
  return featureCollection(
    document,
    mapItems(document, holeId).map((item) => ({
      type: 'Feature',
      id: item.id,
      properties: { ...(item.name === '' ? {} : { name: item.name }), ...item.properties },
      geometry: geometryOf(item.geometry),
    })),
  );
}

/** A collection with the credits of imported data as foreign members. One feature a line. */
export function featureCollection(document: AtlasDocument, features: readonly object[]): string {
  const { name, credits } = titleOf(document);
  const head = { type: 'FeatureCollection', name, ...(credits === '' ? {} : { attribution: credits }) };
  const lines = features.map((feature) => JSON.stringify(feature)).join(',\n');
  return `${JSON.stringify(head).slice(0, -1)},"features":[\n${lines}\n]}\n`;
}

function geometryOf(geometry: MapItem['geometry']): object {
  switch (geometry.type) {
    case 'Polygon':
      return { type: 'Polygon', coordinates: geometry.rings.map((ring) => [...ring, ...ring.slice(0, 1)]) };
    case 'LineString':
      return { type: 'LineString', coordinates: geometry.positions };
    case 'Point':
      return { type: 'Point', coordinates: geometry.at };
  }
}

/** A line of one height, as the contours of a surface come. */
export interface HeightLine {
  readonly heightM: number;
  readonly positions: readonly LonLat[];
}

/** Contours as GeoJSON lines with `height_m`. @throws InputProblem for an unplaced atlas */
export function writeContours(document: AtlasDocument, lines: readonly HeightLine[]): string {
  refuseUnplaced(document, 'GeoJSON');
  return featureCollection(
    document,
    lines.map(({ heightM, positions }) => ({
      type: 'Feature',
      properties: { kind: 'contour', height_m: Math.round(heightM * 1e4) / 1e4 },
      geometry: {
        type: 'LineString',
        coordinates: positions.map((at) => at.map((deg) => Number(deg.toFixed(9)))),
      },
    })),
  );
}
