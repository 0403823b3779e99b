import { InputProblem } from '../../shared/words/inputProblem.ts';

const nameOf = (error: unknown): string => {
  if (!(error instanceof Error)) return '';
  // Dexie wraps the browser's own error, most tellingly for a full disk.
  const inner: unknown = 'inner' in error ? error.inner : undefined;
  return inner instanceof Error && inner.name === 'QuotaExceededError' ? inner.name : error.name;
};

/** Any failure of the library as a sentence and a remedy. */
export function libraryProblem(error: unknown): InputProblem {
  if (error instanceof InputProblem) return error;
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return new InputProblem(
        'library-full',
        'There is no room left to keep this change.',
        'Library',
        'Save the atlas to a file, then remove atlases you no longer need or free some disk space.',
      );
    case 'VersionError':
      return new InputProblem(
        'library-newer',
        'The library was written by a newer Swale.',
        'Library',
        'Use that version, or open the atlas from its file.',
      );
    case 'BlockedError':
      return new InputProblem(
        'library-blocked',
        'Another Swale window holds the library.',
        'Library',
        'Close the other window, then reload this one.',
      );
    default:
      return new InputProblem(
        'library-unavailable',
        'The library cannot be used here, so changes will not outlast this window.',
        'Library',
        'Save the atlas to a file before closing, or leave private browsing and reload.',
      );
  }
}
