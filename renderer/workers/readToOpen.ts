import { readAtlasContent } from '../../shared/formats/bundle.ts';
import type { OpenAnswer, OpenQuestion } from './formatsChannel.ts';
import { formatsProblem } from './formatsProblem.ts';
import { sha256Of } from './sha256.ts';

/** The atlas in a file, with its pictures, or why it cannot be opened. */
export async function readToOpen(
  { fileName, content }: OpenQuestion,
  progress: (share: number) => void,
): Promise<OpenAnswer> {
  try {
    const bytes = new Uint8Array(await content.arrayBuffer());
    progress(0.05);
    const { document, pictures, damaged } = await readAtlasContent(bytes, fileName, sha256Of, {
      crossingOutlines: 'keep',
      progress: (share) => progress(0.05 + 0.95 * share),
    });
    return { kind: 'open', records: JSON.stringify([...document.records.values()]), pictures, damaged };
  } catch (error) {
    return { kind: 'failed', problem: formatsProblem(error, fileName) };
  }
}
