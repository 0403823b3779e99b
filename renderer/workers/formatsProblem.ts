import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { FormatsProblem } from './formatsChannel.ts';

/** Any failure of reading or writing as plain data; `fileName` is only for words. */
export function formatsProblem(error: unknown, fileName: string): FormatsProblem {
  if (error instanceof InputProblem) {
    const { code, message, place, remedy } = error;
    return { code, message, place, remedy };
  }
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'reader-failed',
    message: `${fileName}: a fault in Swale itself (${what}).`,
    place: fileName,
    remedy: 'The atlas is as it was: try another copy, or another format.',
  };
}
