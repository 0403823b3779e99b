import { compareIds, recordsOf } from './document.ts';
import type { AtlasDocument } from './records.ts';

/** One line for each source of imported data that names an owner or a licence, each once, to print with what is made of it. */
export function creditLines(document: AtlasDocument): readonly string[] {
  const lines = recordsOf(document, 'source')
    .toSorted(compareIds)
    .map(({ attribution, licence }) => [attribution, licence].filter((part) => part !== '').join('. '))
    .filter((line) => line !== '');
  return [...new Set(lines)];
}
