import { canonicalRecord } from './canonical.ts';
import { changed, type RecordChange, RecordMap } from './recordMap.ts';
import type { AtlasDocument, AtlasRecord } from './records.ts';

export type { RecordChange };

/** What turns one document into another. Records are immutable, so an unchanged one is the same object. */
export function documentChanges(before: AtlasDocument, after: AtlasDocument): readonly RecordChange[] {
  const shared = sharedChanges(before, after);
  if (shared !== null) return shared.changes;
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
  const shared = sharedChanges(before, after);
  if (shared !== null) return shared.ordered ? shared.changes : null;
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

/** Documents of one descent tell at once what they do not share; null for others. */
const sharedChanges = (before: AtlasDocument, after: AtlasDocument): ReturnType<RecordMap['changesTo']> =>
  before.records instanceof RecordMap && after.records instanceof RecordMap
    ? before.records.changesTo(after.records)
    : null;

/** The document after the changes, changed records in their canonical spelling. Untouched records keep their order; new ones come last. */
export const applyChanges = (document: AtlasDocument, changes: readonly RecordChange[]): AtlasDocument =>
  changed(
    document,
    changes.map(({ id, record }) => ({ id, record: record === null ? null : canonicalRecord(record) })),
  );

export const documentOf = (records: Iterable<AtlasRecord>): AtlasDocument => ({
  records: RecordMap.of(records),
});
