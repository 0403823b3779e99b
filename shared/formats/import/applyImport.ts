import { type Edit, putRecords } from '../../atlas/edits.ts';
import { findRecord } from '../../atlas/document.ts';
import type { AtlasDocument, AtlasRecord, RecordId } from '../../atlas/records.ts';
import { countWords } from './groupRecords.ts';
import { nextLabel, nextLetter } from './holesAndPoints.ts';
import type { ImportGroup, ImportPreview, ImportSelection } from './importPreview.ts';

/**
 * The whole import as one step. Groups the selection leaves out stay away, and so does what would then hang in the air:
 * flags and balls without their hole; a hole without its green keeps its line.
 */
export function applyImport(
  document: AtlasDocument,
  preview: ImportPreview,
  selection: ImportSelection = {},
): Edit {
  const chosen = preview.groups.filter(({ key }) => !isWithout(key, selection));
  const records = withGreen(
    document,
    chosen.flatMap((group) => asChosen(document, group, selection)),
    selection.greenOfHole,
  );
  const kinds = new Map<RecordId, AtlasRecord>([
    ...document.records,
    ...records.map((one) => [one.id, one] as const),
  ]);
  const isGreen = (id: RecordId): boolean => {
    const found = kinds.get(id);
    return found?.type === 'area' && found.kind === 'green';
  };
  const standing = records.flatMap((record): readonly AtlasRecord[] => {
    if (record.type === 'hole' && record.greenId !== null && !isGreen(record.greenId))
      return [{ ...record, greenId: null }];
    if (record.type === 'holeLocation' || record.type === 'ballPosition')
      return kinds.get(record.holeId)?.type === 'hole' ? [record] : [];
    return [record];
  });
  return putRecords(
    `imported ${counts(chosen, selection)} from ${preview.fileName}`,
    standing.length === 0
      ? []
      : [
          ...(preview.header === null ? [] : [preview.header]),
          ...standing,
          { ...preview.source, ...selection.credit },
        ],
  );
}

/** By the key of the group, or by that of its whole kind. */
export const isWithout = (key: string, { without }: ImportSelection): boolean =>
  [key, key.split(':').slice(0, 2).join(':')].some((one) => without?.has(one) === true);

/** The records of a group as what they were chosen to be. */
export function asChosen(
  document: AtlasDocument,
  { key, records }: ImportGroup,
  { areaKinds, pointKinds }: ImportSelection,
): readonly AtlasRecord[] {
  const kind = areaKinds?.[key];
  if (kind !== undefined)
    return records.map((record) =>
      record.type === 'area' ? { ...record, kind, ...fittingHeights(record, kind) } : record,
    );
  const pointKind = pointKinds?.[key];
  if (pointKind === undefined) return records;
  const taken = new Map<RecordId, string[]>();
  for (const record of document.records.values())
    if (record.type === pointKind && record.type !== 'landmark')
      taken.set(record.holeId, [...(taken.get(record.holeId) ?? []), record.label]);
  return records.map((record) => {
    if ((record.type !== 'holeLocation' && record.type !== 'ballPosition') || record.type === pointKind)
      return record;
    const { id, holeId, name, at } = record;
    if (pointKind === 'landmark')
      return { type: 'landmark', id, at, name: name === '' ? record.label : name };
    const labels = taken.get(holeId) ?? [];
    const label = pointKind === 'holeLocation' ? nextLetter(labels) : nextLabel(labels);
    taken.set(holeId, [...labels, label]);
    const common = { id, holeId, label, name, at };
    return pointKind === 'holeLocation'
      ? { type: 'holeLocation', ...common }
      : { type: 'ballPosition', ...common, lie: 'clean', coverOverride: null };
  });
}

/** Heights that only a bunker or a tree has. */
const fittingHeights = (
  record: Extract<AtlasRecord, { type: 'area' }>,
  kind: string,
): Pick<typeof record, 'lipHeightM' | 'treeHeightM' | 'canopyBaseM'> => ({
  lipHeightM: kind === 'bunker' ? record.lipHeightM : null,
  treeHeightM: kind === 'tree' ? record.treeHeightM : null,
  canopyBaseM: kind === 'tree' ? record.canopyBaseM : null,
});

/** The only green that comes in goes to the hole it was meant for, unless that has one or a hole of the file claims it. */
function withGreen(
  document: AtlasDocument,
  records: readonly AtlasRecord[],
  holeId: RecordId | undefined,
): readonly AtlasRecord[] {
  const greens = records.filter((record) => record.type === 'area' && record.kind === 'green');
  const hole = holeId === undefined ? undefined : findRecord(document, 'hole', holeId);
  const [green] = greens;
  if (green === undefined || greens.length > 1 || hole?.greenId !== null) return records;
  const claimed = records.some(
    (record) => record.type === 'hole' && (record.id === hole.id || record.greenId === green.id),
  );
  return claimed ? records : [...records, { ...hole, greenId: green.id }];
}

function counts(groups: ImportPreview['groups'], { areaKinds }: ImportSelection): string {
  const byWords = new Map<string, { record: AtlasRecord; count: number; key: string }>();
  for (const { key, records } of groups) {
    const [record] = records;
    if (record === undefined) continue;
    const what = record.type === 'area' ? `area ${areaKinds?.[key] ?? record.kind}` : record.type;
    const before = byWords.get(what);
    byWords.set(what, { record, key, count: (before?.count ?? 0) + records.length });
  }
  const parts = [...byWords.values()].map(({ record, count, key }) =>
    countWords(record, count, areaKinds?.[key]),
  );
  if (parts.length === 0) return 'nothing';
  return parts.length > 3 ? `${parts.slice(0, 3).join(', ')} and more` : parts.join(', ');
}
