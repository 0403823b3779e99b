import { InputProblem } from '../../shared/words/inputProblem.ts';

const TELLING = ['QuotaExceededError', 'VersionError'];

const nameOf = (error: unknown): string => {
  if (!(error instanceof Error)) return '';
  // The browser's own error is wrapped, most tellingly for a full disk.
  const inner: unknown = 'inner' in error ? error.inner : undefined;
  return inner instanceof Error && TELLING.includes(inner.name) ? inner.name : error.name;
};

const problem = (code: string, what: string, remedy: string): InputProblem =>
  new InputProblem(code, what, 'Library', remedy);

/** A window that has not let go keeps this one from opening the library. */
export const libraryBlocked = (): InputProblem =>
  problem(
    'library-blocked',
    'A window of an older Swale holds the library, so it cannot be opened here yet.',
    'Close the other window; this one then goes on by itself.',
  );

/** Told in a window of old when a newer one needs the library. */
export const libraryTakenOver = (): InputProblem =>
  problem(
    'library-taken-over',
    'A newer Swale in another window has taken over the library.',
    'Reload this window to go on; every change so far is kept.',
  );

export const libraryDeleted = (): InputProblem =>
  problem(
    'library-deleted',
    'The library is being deleted from outside this window.',
    'Save the atlas to a file, then reload this window.',
  );

/** Any failure of the library as a sentence and a remedy; `worked`: it could be used before in this window. */
export function libraryProblem(error: unknown, worked = false): InputProblem {
  if (error instanceof InputProblem) return error;
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return problem(
        'library-full',
        'There is no room left to keep this change.',
        'Save the atlas to a file, then remove atlases you no longer need or free some disk space.',
      );
    case 'VersionError':
      return problem(
        'library-newer',
        'The library was written by a newer Swale.',
        'Use that version, or open the atlas from its file.',
      );
    case 'BlockedError':
      return libraryBlocked();
    default:
      // A disk without any room left shows as a connection that breaks off.
      if (worked)
        return problem(
          'library-stopped',
          'The library takes no more changes: the disk may be full.',
          'Save the atlas to a file, on another disk if need be, and free some space; the next change is then kept with all before it.',
        );
      return problem(
        'library-unavailable',
        'The library cannot be used here, so changes will not outlast this window.',
        'Save the atlas to a file before closing, or leave private browsing and reload.',
      );
  }
}
