import { type PlainProblem, plainProblem } from './plainProblem.ts';

/** Any failure of reading or writing as plain data; `fileName` is only for words. */
export const formatsProblem = (error: unknown, fileName: string): PlainProblem =>
  plainProblem(error, (what) => ({
    code: 'reader-failed',
    message: `${fileName}: a fault in Swale itself (${what}).`,
    place: fileName,
    remedy: 'The atlas is as it was: try another copy, or another format.',
  }));
