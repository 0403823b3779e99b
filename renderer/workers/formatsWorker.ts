import { oneFile } from '../../shared/exchange/oneFile.ts';
import { sendOut } from '../../shared/exchange/sendOut.ts';
import { csvPeek } from '../../shared/formats/csv/csvPeek.ts';
import { type FileFormat, formatOf, HEAD_BYTES, refuseSize } from '../../shared/formats/import/fileFormat.ts';
import { previewImport } from '../../shared/formats/import/previewImport.ts';
import { formatsProblem } from './formatsProblem.ts';
import { readToOpen } from './readToOpen.ts';
import type {
  FromFormats,
  PreviewAnswer,
  PreviewQuestion,
  SendOutAnswer,
  SendOutQuestion,
  ToFormats,
} from './formatsChannel.ts';

/** What of a worker's own scope is used here: the DOM library describes a window's instead. */
interface WorkerScope {
  postMessage(message: FromFormats): void;
  onmessage: ((event: MessageEvent<ToFormats>) => void) | null;
}
const scope = globalThis as unknown as WorkerScope;

async function previewed(
  { document, source, options }: PreviewQuestion,
  progress: (share: number) => void,
): Promise<PreviewAnswer> {
  const { fileName, content: blob } = source;
  let format: FileFormat | null = null;
  let content: Uint8Array | null = null;
  try {
    // The size is looked at before anything is read: what is too large takes no memory at all.
    format = formatOf(fileName, new Uint8Array(await blob.slice(0, HEAD_BYTES).arrayBuffer()));
    refuseSize(format, blob.size, fileName);
    content = new Uint8Array(await blob.arrayBuffer());
    progress(0.1);
    const projection = await source.projection?.text();
    const preview = await previewImport(
      document,
      { fileName, content, ...(projection !== undefined && { projection }) },
      { ...options, progress: (done, of) => progress(0.1 + (0.9 * done) / Math.max(1, of)) },
    );
    return { kind: 'preview', format, preview, problem: null, csv: peeked(format, content, source, options) };
  } catch (error) {
    const csv = content === null ? null : peeked(format, content, source, options);
    return { kind: 'preview', format, preview: null, problem: formatsProblem(error, fileName), csv };
  }
}

function peeked(
  format: FileFormat | null,
  content: Uint8Array,
  { fileName }: PreviewQuestion['source'],
  { columns = {} }: PreviewQuestion['options'],
): PreviewAnswer['csv'] {
  if (format !== 'csv') return null;
  try {
    return csvPeek(content, fileName, columns);
  } catch {
    return null;
  }
}

async function sent(
  { document, request, stem }: SendOutQuestion,
  progress: (share: number) => void,
): Promise<SendOutAnswer> {
  try {
    return { kind: 'sendOut', file: oneFile(stem, await sendOut(document, request, progress)) };
  } catch (error) {
    return { kind: 'failed', problem: formatsProblem(error, '') };
  }
}

scope.onmessage = ({ data: { ticket, question } }) => {
  const progress = (share: number): void => scope.postMessage({ ticket, share });
  const answer =
    question.kind === 'preview'
      ? previewed(question, progress)
      : question.kind === 'open'
        ? readToOpen(question, progress)
        : sent(question, progress);
  void answer.then((found) => scope.postMessage({ ticket, answer: found }));
};
