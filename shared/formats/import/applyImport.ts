import { type Edit, putRecords } from '../../atlas/edits.ts';
import type { AtlasDocument, AtlasRecord, RecordId } from '../../atlas/records.ts';
import type { ImportPreview, ImportSelection } from './importPreview.ts';

/**
 * The whole import as one step. Groups the selection leaves out stay away, and so does what would then hang in the air:
 * flags and balls without their hole; a hole without its green keeps its line.
 */
export function applyImport(
  document: AtlasDocument,
  preview: ImportPreview,
  selection: ImportSelection = {},
): Edit {
  const chosen = preview.groups.filter(({ key }) => selection.without?.has(key) !== true);
  const records = chosen.flatMap(({ key, records: own }) => {
    const kind = selection.areaKinds?.[key];
    return own.map((record) => (record.type === 'area' && kind !== undefined ? { ...record, kind } : record));
  });
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
    `imported ${counts(chosen)} from ${preview.fileName}`,
    standing.length === 0
      ? []
      : [...(preview.header === null ? [] : [preview.header]), ...standing, preview.source],
  );
}

function counts(groups: ImportPreview['groups']): string {
  const parts = groups.map(({ title, records }) => `${String(records.length)} ${title}`);
  if (parts.length === 0) return 'nothing';
  return parts.length > 3 ? `${parts.slice(0, 3).join(', ')} and more` : parts.join(', ');
}
