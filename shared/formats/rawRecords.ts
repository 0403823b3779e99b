import type { RawRecord } from '../atlas/migrations.ts';
import { shown } from '../atlas/schemaIssue.ts';
import { InputProblem } from '../words/inputProblem.ts';
import type { Place } from './atlasFileChecks.ts';
import {
  isMappedType,
  type ListedType,
  listedTypes,
  mappedTypes,
  type MappedType,
} from './atlasFileShape.ts';

// From GeoJSON to raw records: nothing is promised yet of their members, which the schema looks at after migrations.

type Members = Readonly<Record<string, unknown>>;

function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function envelope(root: unknown, fileName: string): { swale: Members; features: readonly unknown[] } {
  const foreign = (what: string): InputProblem =>
    new InputProblem(
      'foreign-file',
      what,
      fileName,
      'Open an atlas file saved by Swale, or import this one as map data instead.',
    );
  if (!isMembers(root) || typeof root['type'] !== 'string') throw foreign('This is not a GeoJSON file.');
  if (root['type'] !== 'FeatureCollection')
    throw foreign(`This is a GeoJSON ${shown(root['type'])}, not the FeatureCollection of an atlas.`);
  const { swale, features } = root;
  if (!isMembers(swale)) throw foreign('This is GeoJSON, but not an atlas: it has no "swale" member.');
  if (!Array.isArray(features)) throw foreign('This has no list of features.');
  refuseUnknown(root, ['type', 'swale', 'features', 'bbox'], placeInFile(fileName, 'the collection'));
  return { swale, features };
}

export function listedRecords(
  swale: Members,
  fileName: string,
  take: (record: RawRecord, place: Place) => void,
): void {
  const lists = Object.entries(listedTypes) as [ListedType, string][];
  refuseUnknown(
    swale,
    ['format', 'atlas', ...lists.map(([, list]) => list)],
    placeInFile(fileName, 'the "swale" member'),
  );
  const atlas = swale['atlas'];
  const headerPlace = placeInFile(fileName, 'swale.atlas');
  if (!isMembers(atlas))
    throw new InputProblem(
      'no-header',
      `It is ${shown(atlas)}.`,
      headerPlace.at(''),
      'Give the name, kind, placed, anchor and note of the atlas.',
    );
  refuseReserved(atlas, ['type', 'id'], headerPlace);
  take({ ...atlas, type: 'atlas', id: 'atlas' }, headerPlace);
  for (const [type, list] of lists) {
    const entries = swale[list] ?? [];
    if (!Array.isArray(entries))
      throw new InputProblem(
        'bad-field',
        `It is ${shown(entries)}, which is not a list.`,
        `${fileName}, swale.${list}`,
        'Give a list, empty if there are none.',
      );
    entries.forEach((entry: unknown, i) => {
      const place = placeInFile(fileName, `${type} ${String(i + 1)}${described(entry, entry)}`);
      if (!isMembers(entry))
        throw new InputProblem(
          'bad-field',
          `It is ${shown(entry)}, which is not an object.`,
          place.at(''),
          'Take it out.',
        );
      if ('type' in entry)
        refuseUnknown(
          entry,
          Object.keys(entry).filter((key) => key !== 'type'),
          place,
        );
      take({ ...entry, type }, place);
    });
  }
}

export function featureRecord(feature: unknown, place: Place): RawRecord {
  if (!isMembers(feature) || feature['type'] !== 'Feature')
    throw new InputProblem('bad-field', 'It is not a GeoJSON Feature.', place.at('type'), 'Take it out.');
  refuseUnknown(feature, ['type', 'id', 'properties', 'geometry', 'bbox'], place);
  const { properties, geometry, id } = feature;
  const type = isMembers(properties) ? properties['swale'] : undefined;
  if (!isMembers(properties) || type === undefined)
    throw new InputProblem(
      'foreign-feature',
      'The feature is not Swale’s: it has no "swale" property.',
      place.at('properties'),
      'Take it out, or import the file as map data instead.',
    );
  if (!isMappedType(type))
    throw new InputProblem(
      'unknown-kind',
      `It says ${shown(type)}, which is not known.`,
      place.at('properties.swale'),
      `Use one of: ${Object.keys(mappedTypes).join(', ')}.`,
    );
  const rest = Object.fromEntries(Object.entries(properties).filter(([key]) => key !== 'swale'));
  refuseReserved(rest, ['type', 'id', mappedTypes[type].member], place);
  const nulls = Object.fromEntries(mappedTypes[type].optional.map((key) => [key, null]));
  return { ...nulls, ...rest, type, id, [mappedTypes[type].member]: geometryValue(geometry, type, place) };
}

function geometryValue(geometry: unknown, type: MappedType, place: Place): unknown {
  const wanted = mappedTypes[type].geometry;
  if (!isMembers(geometry) || geometry['type'] !== wanted)
    throw new InputProblem(
      'wrong-geometry',
      `It is ${shown(isMembers(geometry) ? geometry['type'] : geometry)}, not ${shown(wanted)}.`,
      place.at('geometry.type'),
      wanted === 'Polygon'
        ? 'Give each area one Polygon; split a MultiPolygon into areas.'
        : `Give a ${wanted}.`,
    );
  refuseUnknown(geometry, ['type', 'coordinates', 'bbox'], place);
  const coordinates = geometry['coordinates'];
  if (wanted !== 'Polygon' || !Array.isArray(coordinates)) return coordinates;
  return coordinates.map((ring: unknown, r) => (Array.isArray(ring) ? openRing(ring, r, place) : ring));
}

/** The ring without its repeated last position. */
function openRing(ring: readonly unknown[], index: number, place: Place): readonly unknown[] {
  const field = `geometry.coordinates[${String(index)}]`;
  if (ring.length < 4)
    throw new InputProblem(
      'too-few-positions',
      `The outline has ${String(ring.length)} positions; an area needs at least four, the last the same as the first.`,
      place.at(field),
      'Add corners, or take the area out.',
    );
  if (JSON.stringify(ring[0]) !== JSON.stringify(ring[ring.length - 1]))
    throw new InputProblem(
      'ring-not-closed',
      'The outline is not closed: its last position differs from its first.',
      place.at(field),
      'Repeat the first position at the end.',
    );
  return ring.slice(0, -1);
}

function refuseUnknown(members: Members, known: readonly string[], place: Place): void {
  const unknown = Object.keys(members).find((key) => !known.includes(key));
  if (unknown !== undefined) throw unknownMember(unknown, place);
}

/** Names that the reader fills in itself, so that a file cannot say them twice. */
function refuseReserved(members: Members, reserved: readonly string[], place: Place): void {
  const given = reserved.find((key) => Object.hasOwn(members, key));
  if (given !== undefined) throw unknownMember(given, place);
}

function unknownMember(unknown: string, place: Place): InputProblem {
  return new InputProblem(
    'unknown-member',
    `It holds ${shown(unknown)}, which an atlas has no place for.`,
    place.at(''),
    'Take it out; import the file instead if it comes from another program.',
  );
}

export function featurePlace(feature: unknown, index: number, fileName: string): Place {
  const properties = isMembers(feature) ? feature['properties'] : undefined;
  return placeInFile(fileName, `feature ${String(index + 1)}${described(feature, properties)}`);
}

/** Such as ` (id "b3", "Front left")`. */
function described(owner: unknown, named: unknown): string {
  const id = isMembers(owner) ? owner['id'] : undefined;
  const name = isMembers(named) ? named['name'] : undefined;
  const parts = [
    typeof id === 'string' || typeof id === 'number' ? `id ${shown(id)}` : '',
    typeof name === 'string' && name !== '' ? shown(name) : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

export function placeInFile(fileName: string, short: string): Place {
  return { short, at: (field) => [fileName, short, field].filter((part) => part !== '').join(', ') };
}
