import { canonicalRecord } from '../atlas/canonical.ts';
import { compareIds, headerOf, recordsOf } from '../atlas/document.ts';
import type { AtlasDocument, AtlasRecord, Club, Rings } from '../atlas/records.ts';
import { ATLAS_FORMAT, recordSchemas } from '../atlas/schema.ts';
import type { LonLat } from '../geometry/points.ts';
import { techniques } from '../words/vocabulary.ts';
import { type ListedType, listedTypes, mappedTypes, type MappedType } from './atlasFileShape.ts';

/** The document as text, the same for equal documents whatever the order of their records. Ends with a newline. */
export function writeAtlasFile(document: AtlasDocument): string {
  const header = listed(headerOf(document));
  const lists = (Object.entries(listedTypes) as [ListedType, string][]).map(([type, list]) => {
    const lines = recordsOf(document, type)
      .toSorted(compareIds)
      .map((record) => `   ${JSON.stringify(listed(record))}`);
    return `  ${JSON.stringify(list)}: ${bracketed(lines, '  ')}`;
  });
  const features = (Object.keys(mappedTypes) as MappedType[]).flatMap((type) =>
    recordsOf(document, type)
      .toSorted(compareIds)
      .map((record) => feature(inOrder<MappedRecord>(record))),
  );
  return [
    '{',
    ' "type": "FeatureCollection",',
    ' "swale": {',
    `  "format": ${String(ATLAS_FORMAT)},`,
    `  "atlas": ${JSON.stringify({ ...header, id: undefined })},`,
    lists.join(',\n'),
    ' },',
    ` "features": ${bracketed(features, ' ')}`,
    '}',
    '',
  ].join('\n');
}

type MappedRecord = Extract<AtlasRecord, { readonly type: MappedType }>;

function feature(record: MappedRecord): string {
  const { geometry, member, optional } = mappedTypes[record.type];
  const left: ReadonlySet<string> = new Set(['type', 'id', member]);
  const leftOutWhenNull: ReadonlySet<string> = new Set(optional);
  const properties = Object.entries(record).filter(
    ([key, value]) => !left.has(key) && !(value === null && leftOutWhenNull.has(key)),
  );
  const head = {
    type: 'Feature',
    id: record.id,
    properties: { swale: record.type, ...Object.fromEntries(properties) },
  };
  return `  ${JSON.stringify(head).slice(0, -1)},"geometry":{"type":"${geometry}","coordinates":${coordinates(record)}}}`;
}

function coordinates(record: MappedRecord): string {
  switch (record.type) {
    case 'area':
      return closed(record.rings);
    case 'elevationGrid':
    case 'picture':
      return closed(record.corners);
    case 'line':
      return line(record.positions);
    default:
      return JSON.stringify(record.at);
  }
}

const closed = (rings: Rings): string =>
  `[${rings.map((ring) => line([...ring, ...ring.slice(0, 1)])).join(',')}]`;

const line = (positions: readonly LonLat[]): string =>
  bracketed(
    positions.map((position) => `   ${JSON.stringify(position)}`),
    '  ',
  );

function bracketed(lines: readonly string[], indent: string): string {
  return lines.length === 0 ? '[]' : `[\n${lines.join(',\n')}\n${indent}]`;
}

function listed(record: AtlasRecord): object {
  return Object.fromEntries(Object.entries(inOrder(record)).filter(([key]) => key !== 'type'));
}

/** The canonical record with its members in the schema's order, whatever order edits left them in. */
function inOrder<T extends AtlasRecord>(record: T): T {
  const shape: object = recordSchemas[record.type].shape;
  const canonical = canonicalRecord(record);
  return {
    ...ordered(canonical, Object.keys(shape)),
    ...(canonical.type === 'player' && {
      bag: canonical.bag.map(clubInOrder),
      repertoire: ordered(canonical.repertoire, techniques),
    }),
  };
}

function clubInOrder(club: Club): Club {
  const carriesM = club.carriesM && ordered(club.carriesM, ['smallM', 'mediumM', 'longM']);
  return ordered(
    { ...club, ...(carriesM && { carriesM }) },
    Object.keys(recordSchemas.player.shape.bag.element.shape),
  );
}

/** The same members, those in `keys` first and in that order. */
function ordered<T extends object>(value: T, keys: readonly string[]): T {
  const first: object = Object.fromEntries(
    keys.filter((key) => Object.hasOwn(value, key)).map((key) => [key, undefined]),
  );
  return { ...first, ...value };
}
