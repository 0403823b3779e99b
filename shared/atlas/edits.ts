import { InputProblem } from '../words/inputProblem.ts';
import { canonicalRecord } from './canonical.ts';
import { atlasDocument, headerOf, recordsOf } from './document.ts';
import { changed, type RecordChange } from './recordMap.ts';
import type { AtlasDocument, AtlasRecord, RecordId } from './records.ts';
import { recordSchemas } from './schema.ts';
import { schemaIssueText, valueAt } from './schemaIssue.ts';

/** A change to the document: pure, and with the words undo shows for it. */
export interface Edit {
  /** What was done, in the past tense and small letters: "moved ball 3". */
  readonly annotation: string;
  readonly apply: (document: AtlasDocument) => AtlasDocument;
}

/** Several edits as one step. */
export function together(annotation: string, edits: readonly Edit[]): Edit {
  return { annotation, apply: (document) => edits.reduce((before, edit) => edit.apply(before), document) };
}

/**
 * Adds records, or replaces those of the same ids. Applying it throws InputProblem for a record that the schema refuses or
 * that would change its type, and leaves the document alone.
 */
export function putRecords(annotation: string, records: readonly AtlasRecord[]): Edit {
  return {
    annotation,
    apply: (document) => {
      const after = new Map<RecordId, AtlasRecord>();
      for (const record of records) {
        const before = after.get(record.id) ?? document.records.get(record.id);
        if (before !== undefined && before.type !== record.type)
          throw new InputProblem(
            'duplicate-id',
            `The id "${record.id}" already names a ${before.type}.`,
            record.type,
            'Use another id.',
          );
        after.set(record.id, validRecord(record));
      }
      return changed(document, recordChanges(after));
    },
  };
}

/**
 * Takes records out, and with them what would hang in the air: the flags and balls of a hole, the choices for a ball or a
 * flag or of a player. A hole whose green goes keeps its place without one. The header cannot go.
 */
export function removeRecords(annotation: string, ids: Iterable<RecordId>): Edit {
  const wanted = [...ids];
  return {
    annotation,
    apply: (document) => {
      const gone = new Set(wanted.filter((id) => id !== 'atlas' && document.records.has(id)));
      if (gone.size === 0) return document;
      for (const record of recordsOf(document, 'holeLocation'))
        if (gone.has(record.holeId)) gone.add(record.id);
      for (const record of recordsOf(document, 'ballPosition'))
        if (gone.has(record.holeId)) gone.add(record.id);
      for (const record of recordsOf(document, 'choice'))
        if (gone.has(record.ballId) || gone.has(record.flagId) || gone.has(record.playerId))
          gone.add(record.id);
      const changes: RecordChange[] = Array.from(gone, (id) => ({ id, record: null }));
      for (const hole of recordsOf(document, 'hole'))
        if (hole.greenId !== null && gone.has(hole.greenId) && !gone.has(hole.id))
          changes.push({ id: hole.id, record: { ...hole, greenId: null } });
      return changed(document, changes);
    },
  };
}

/** Makes one of the conditions, or one of the players, the one in use. */
export function useRecord(annotation: string, type: 'conditions' | 'player', id: RecordId): Edit {
  return {
    annotation,
    apply: (document) => {
      if (document.records.get(id)?.type !== type) throw unknownId(id, type);
      const used = recordsOf(document, type).filter((record) => record.inUse !== (record.id === id));
      return changed(
        document,
        used.map((record) => ({ id: record.id, record: { ...record, inUse: record.id === id } })),
      );
    },
  };
}

/** Members of the header: its name, note, kind, or whether it is placed. The anchor moves only with the ground (placing.ts). */
export function changeHeader(
  annotation: string,
  change: Partial<Pick<ReturnType<typeof headerOf>, 'name' | 'note' | 'kind' | 'placed'>>,
): Edit {
  return {
    annotation,
    apply: (document) =>
      changed(document, [{ id: 'atlas', record: validRecord({ ...headerOf(document), ...change }) }]),
  };
}

/** A document with nothing but a header. */
export function newAtlas(header: ReturnType<typeof headerOf>): AtlasDocument {
  return atlasDocument([validRecord(header)]);
}

const recordChanges = (records: ReadonlyMap<RecordId, AtlasRecord>): readonly RecordChange[] =>
  Array.from(records, ([id, record]) => ({ id, record }));

function unknownId(id: RecordId, type: AtlasRecord['type']): InputProblem {
  return new InputProblem(
    'unknown-reference',
    `There is no ${type} "${id}".`,
    '',
    'It may have been taken out meanwhile.',
  );
}

function validRecord<T extends AtlasRecord>(record: T): T {
  const result = recordSchemas[record.type].safeParse(record);
  if (result.success) return canonicalRecord(record);
  const issue = result.error.issues[0];
  if (issue === undefined) throw new RangeError('a refused record without a reason');
  const found = valueAt(record, issue.path);
  const { what, remedy } = schemaIssueText(issue, found);
  throw new InputProblem(
    'bad-field',
    `It ${what}`,
    `${record.type} "${record.id}", ${issue.path.join('.')}`,
    remedy,
  );
}
