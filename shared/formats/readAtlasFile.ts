import { atlasDocument } from '../atlas/document.ts';
import { migrate, type RawRecord } from '../atlas/migrations.ts';
import type { AtlasDocument, AtlasRecord } from '../atlas/records.ts';
import { ATLAS_FORMAT, recordSchemas } from '../atlas/schema.ts';
import { schemaIssueText, shown, valueAt } from '../atlas/schemaIssue.ts';
import { InputProblem } from '../words/inputProblem.ts';
import {
  isMappedType,
  type ListedType,
  listedTypes,
  mappedTypes,
  type MappedType,
} from './atlasFileShape.ts';
import { checkPositions, checkReferences, type Place } from './atlasFileChecks.ts';
import { parseJson } from './jsonText.ts';

export interface ReadOptions {
  /**
   * `keep` lets through outlines that cross themselves, for opening a person's own unfinished work: `checkAtlas` finds
   * and mends them. Planning needs the default, `refuse`.
   */
  readonly crossingOutlines?: 'refuse' | 'keep';
}

/** More records, or positions in one outline, than this are refused: an atlas is one course, traced by hand. */
const MOST_RECORDS = 100_000;

/**
 * The document in an atlas file's text. `fileName` is only for messages.
 * @throws InputProblem naming the file, the feature (number, id, name) and the field, with a remedy.
 */
export function readAtlasFile(text: string, fileName: string, options: ReadOptions = {}): AtlasDocument {
  const root = parseJson(text, fileName);
  const { swale, features } = envelope(root, fileName);
  const format = knownFormat(swale['format'], fileName);
  const places = new Map<RawRecord, Place>();
  const raw: RawRecord[] = [];
  const take = (record: RawRecord, place: Place): void => {
    raw.push(record);
    places.set(record, place);
  };
  listedRecords(swale, fileName, take);
  features.forEach((feature, i) => {
    const place = featurePlace(feature, i, fileName);
    take(featureRecord(feature, place), place);
  });
  if (raw.length > MOST_RECORDS)
    throw new InputProblem(
      'too-many-features',
      `The file holds ${String(raw.length)} features; the most is ${String(MOST_RECORDS)}.`,
      fileName,
      'Keep one course to a file.',
    );

  const raised = format === ATLAS_FORMAT ? raw : migrate(raw, format);
  const placeOf = new Map<AtlasRecord, Place>();
  const records: AtlasRecord[] = [];
  const seen = new Map<string, Place>();
  for (const candidate of raised) {
    const place = places.get(candidate) ?? placeInFile(fileName, `record ${shown(candidate['id'])}`);
    const record = validRecord(candidate, place);
    const earlier = seen.get(record.id);
    if (earlier !== undefined)
      throw new InputProblem(
        'duplicate-id',
        `The id ${shown(record.id)} is used twice, first at ${earlier.short}.`,
        place.at('id'),
        'Give one of them an id of its own.',
      );
    seen.set(record.id, place);
    placeOf.set(record, place);
    records.push(record);
  }
  checkPositions(records, placeOf, options.crossingOutlines ?? 'refuse');
  checkReferences(records, placeOf);
  return atlasDocument(records);
}

type Members = Readonly<Record<string, unknown>>;

function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function envelope(root: unknown, fileName: string): { swale: Members; features: readonly unknown[] } {
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

function knownFormat(format: unknown, fileName: string): number {
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1)
    throw new InputProblem(
      'unknown-format',
      `The format number is ${shown(format)}, which no Swale ever wrote.`,
      `${fileName}, swale.format`,
      'Use the backup beside it, or another copy.',
    );
  if (format > ATLAS_FORMAT)
    throw new InputProblem(
      'newer-file',
      `The file is of format ${String(format)}, made by a newer Swale; this one reads up to ${String(ATLAS_FORMAT)}.`,
      `${fileName}, swale.format`,
      'Update Swale to open it. The file is left as it is.',
    );
  return format;
}

function listedRecords(
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

function featureRecord(feature: unknown, place: Place): RawRecord {
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

function validRecord(candidate: RawRecord, place: Place): AtlasRecord {
  const type = candidate['type'] as AtlasRecord['type'];
  const result = recordSchemas[type].safeParse(candidate);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  if (issue === undefined) throw new RangeError('a refused record without a reason');
  const [member, ...deeper] = issue.path;
  const found = valueAt(candidate, issue.path);
  const geometric = isMappedType(type) && member === mappedTypes[type].member;
  const head = geometric
    ? 'geometry.coordinates'
    : isMappedType(type) && member !== 'id' && member !== undefined
      ? `properties.${String(member)}`
      : String(member ?? '');
  const field =
    head + deeper.map((key) => (typeof key === 'number' ? `[${String(key)}]` : `.${String(key)}`)).join('');
  const inPosition = typeof found === 'number' && (geometric || member === 'line' || member === 'anchor');
  const { what, remedy } = inPosition
    ? positionText(found, deeper.at(-1) ?? 0)
    : schemaIssueText(issue, found);
  throw new InputProblem(issueCode(issue.code, member, inPosition), `It ${what}`, place.at(field), remedy);
}

function issueCode(code: string, member: PropertyKey | undefined, inPosition: boolean): string {
  if (inPosition) return 'position-out-of-range';
  if (code === 'unrecognized_keys') return 'unknown-member';
  return code === 'invalid_value' && member === 'kind' ? 'unknown-kind' : 'bad-field';
}

function positionText(value: number, axis: PropertyKey): { what: string; remedy: string } {
  const name = axis === 1 ? 'latitude' : 'longitude';
  const limit = axis === 1 ? 90 : 180;
  if (!Number.isFinite(value))
    return { what: `is not a finite number.`, remedy: `Give the ${name} in degrees.` };
  const what = `is ${String(value)}, but a ${name} lies within ${String(limit)} degrees.`;
  if (axis === 1 && Math.abs(value) <= 180)
    return { what, remedy: 'Longitude comes first and latitude second: they may be swapped.' };
  return {
    what,
    remedy: 'Positions are WGS 84 degrees: these may be of a map projection, and need converting.',
  };
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

function featurePlace(feature: unknown, index: number, fileName: string): Place {
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

function placeInFile(fileName: string, short: string): Place {
  return { short, at: (field) => [fileName, short, field].filter((part) => part !== '').join(', ') };
}
