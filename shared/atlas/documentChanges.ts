import { canonicalRecord } from './canonical.ts';
import type { AtlasDocument, AtlasRecord, RecordId } from './records.ts';

/** A record as a change leaves it; null where the change took it away. */
export interface RecordChange {
  readonly id: RecordId;
  readonly record: AtlasRecord | null;
}

/** What turns one document into another. Records are immutable, so an unchanged one is the same object. */
export function documentChanges(before: AtlasDocument, after: AtlasDocument): readonly RecordChange[] {
  const ordered = orderedChanges(before, after);
  if (ordered !== null) return ordered;
  const changes: RecordChange[] = [];
  for (const [id, record] of after.records) {
    if (before.records.get(id) !== record) changes.push({ id, record });
  }
  for (const id of before.records.keys()) {
    if (!after.records.has(id)) changes.push({ id, record: null });
  }
  return changes;
}

/**
 * The same, for documents of which the records that stay keep their order and new ones come last, as nearly every edit
 * leaves them; null for others. Both are gone through side by side, which takes a third of the time.
 */
export function orderedChanges(before: AtlasDocument, after: AtlasDocument): readonly RecordChange[] | null {
  const changes: RecordChange[] = [];
  const gone: RecordChange[] = [];
  const olds = before.records.values();
  let old = olds.next();
  for (const record of after.records.values()) {
    while (old.done !== true && old.value.id !== record.id && !after.records.has(old.value.id)) {
      gone.push({ id: old.value.id, record: null });
      old = olds.next();
    }
    if (old.done === true) {
      changes.push({ id: record.id, record });
      continue;
    }
    if (old.value.id !== record.id) return null;
    if (old.value !== record) changes.push({ id: record.id, record });
    old = olds.next();
  }
  for (; old.done !== true; old = olds.next()) gone.push({ id: old.value.id, record: null });
  return [...changes, ...gone];
}

/** The document after the changes, changed records in their canonical spelling. Untouched records keep their order; new ones come last. */
export function applyChanges(document: AtlasDocument, changes: readonly RecordChange[]): AtlasDocument {
  const records = new Map<RecordId, AtlasRecord>(document.records);
  for (const { id, record } of changes) {
    if (record === null) records.delete(id);
    else records.set(id, canonicalRecord(record));
  }
  return { records };
}

export function documentOf(records: Iterable<AtlasRecord>): AtlasDocument {
  return { records: new Map(Array.from(records, (record) => [record.id, record])) };
}
