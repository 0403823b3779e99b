import { compareIds, recordsOf } from './document.ts';
import type { AtlasDocument } from './records.ts';

/**
 * One line for each source of imported data, and each picture traced over, that names an owner or a licence; each line
 * once, to print with what is made of them.
 */
export function creditLines(document: AtlasDocument): readonly string[] {
  const lines = [
    ...recordsOf(document, 'source').toSorted(compareIds),
    ...recordsOf(document, 'picture').toSorted(compareIds),
  ]
    .map(({ attribution, licence }) => [attribution, licence].filter((part) => part !== '').join('. '))
    .filter((line) => line !== '');
  return [...new Set(lines)];
}
