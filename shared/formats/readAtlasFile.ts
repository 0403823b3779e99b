import { atlasDocument } from '../atlas/document.ts';
import { migrate, type RawRecord } from '../atlas/migrations.ts';
import type { AtlasDocument, AtlasRecord } from '../atlas/records.ts';
import { ATLAS_FORMAT, recordSchemas } from '../atlas/schema.ts';
import { schemaIssueText, shown, valueAt } from '../atlas/schemaIssue.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { isMappedType, mappedTypes } from './atlasFileShape.ts';
import { envelope, featurePlace, featureRecord, listedRecords, placeInFile } from './rawRecords.ts';
import { checkPositions, checkReferences, type Place } from './atlasFileChecks.ts';
import { parseJson } from './jsonText.ts';

export interface ReadOptions {
  /**
   * `keep` lets through outlines that cross themselves, for opening a person's own unfinished work: `checkAtlas` finds
   * and mends them. Planning needs the default, `refuse`.
   */
  readonly crossingOutlines?: 'refuse' | 'keep';
  /** Told the share that is done, 0 to 1, every so often. */
  readonly progress?: (share: number) => void;
}

/** More records than this are refused: an atlas is one course, traced by hand. */
const MOST_RECORDS = 100_000;

/** Shares of the work that are behind when the text is parsed, and when all records are valid. */
const PARSED = 0.3;
const VALID = 0.9;
const TOLD_EVERY = 500;

/**
 * The document in an atlas file's text. `fileName` is only for messages.
 * @throws InputProblem naming the file, the feature (number, id, name) and the field, with a remedy.
 */
export function readAtlasFile(text: string, fileName: string, options: ReadOptions = {}): AtlasDocument {
  const root = parseJson(text, fileName);
  options.progress?.(PARSED);
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
    if (records.length % TOLD_EVERY === 0)
      options.progress?.(PARSED + ((VALID - PARSED) * records.length) / raised.length);
  }
  checkPositions(records, placeOf, options.crossingOutlines ?? 'refuse');
  checkReferences(records, placeOf);
  return atlasDocument(records);
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
