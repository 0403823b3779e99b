import { holesInOrder, recordsOf } from '../../atlas/document.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import type { LonLat } from '../../geometry/points.ts';

/** A record as a map shows it, with plain properties that importing understands again. */
export interface MapItem {
  readonly id: string;
  readonly name: string;
  readonly folder: string;
  readonly properties: Readonly<Record<string, string | number>>;
  readonly geometry:
    | { readonly type: 'Polygon'; readonly rings: readonly (readonly LonLat[])[] }
    | { readonly type: 'LineString'; readonly positions: readonly LonLat[] }
    | { readonly type: 'Point'; readonly at: LonLat };
}

/** Everything of an atlas, or of one hole's flags and balls with all ground, that has a place on the map. */
export function mapItems(document: AtlasDocument, holeId: string | null): readonly MapItem[] {
  const holes = holesInOrder(document).filter(({ id }) => holeId === null || id === holeId);
  const labels = new Map(holes.map(({ id, label }) => [id, label]));
  const optional = (key: string, value: number | string | null): Record<string, number | string> =>
    value === null || value === '' ? {} : { [key]: value };
  return [
    ...recordsOf(document, 'area').map((area): MapItem => ({
      id: area.id,
      name: area.name,
      folder: area.kind,
      properties: {
        kind: area.kind,
        ...optional('lip_height_m', area.lipHeightM),
        ...optional('height', area.treeHeightM),
      },
      geometry: { type: 'Polygon', rings: area.rings },
    })),
    ...recordsOf(document, 'line').map((line): MapItem => ({
      id: line.id,
      name: line.name,
      folder: line.kind,
      properties: { kind: line.kind, ...optional('height_m', line.heightM) },
      geometry: { type: 'LineString', positions: line.positions },
    })),
    ...holes.flatMap((hole): MapItem[] =>
      hole.line === null
        ? []
        : [
            {
              id: hole.id,
              name: hole.name,
              folder: 'holes',
              properties: { golf: 'hole', ref: hole.label, ...optional('par', hole.par) },
              geometry: { type: 'LineString', positions: hole.line },
            },
          ],
    ),
    ...flagsAndBalls(document, labels),
    ...recordsOf(document, 'spotHeight').map((spot): MapItem => ({
      id: spot.id,
      name: '',
      folder: 'spot heights',
      properties: { height_m: spot.heightM, accuracy_m: spot.accuracyM },
      geometry: { type: 'Point', at: spot.at },
    })),
  ];
}

/** Flags and balls of the holes in `labels`, named so that they find their hole again. */
export function flagsAndBalls(
  document: AtlasDocument,
  labels: ReadonlyMap<string, string>,
): readonly MapItem[] {
  return [...recordsOf(document, 'holeLocation'), ...recordsOf(document, 'ballPosition')].flatMap(
    (record): MapItem[] => {
      const hole = labels.get(record.holeId);
      if (hole === undefined) return [];
      const word = record.type === 'holeLocation' ? 'flag' : 'ball';
      return [
        {
          id: record.id,
          name: `Hole ${hole} ${word} ${record.label}`,
          folder: `${word}s`,
          properties: {
            record: record.type,
            hole,
            label: record.label,
            ...(record.name === '' ? {} : { note: record.name }),
          },
          geometry: { type: 'Point', at: record.at },
        },
      ];
    },
  );
}
