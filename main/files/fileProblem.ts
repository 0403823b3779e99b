import { basename } from 'node:path';
import { InputProblem } from '../../shared/words/inputProblem.ts';

const sentences: Readonly<Record<string, readonly [what: string, remedy: string]>> = {
  ENOENT: ['there is no such file or folder.', 'Check the name and the folder.'],
  EACCES: ['this account may not use it.', 'Choose another place, or change its permissions.'],
  EPERM: ['this account may not use it.', 'Choose another place, or change its permissions.'],
  EROFS: ['the disk can only be read.', 'Choose another place.'],
  ENOSPC: ['the disk is full.', 'Make room, or choose another place; the old file is untouched.'],
  EISDIR: ['this is a folder.', 'Name a file.'],
  ENOTDIR: ['a part of its path is not a folder.', 'Check the path.'],
  EEXIST: ['it exists already.', 'Choose another name.'],
};

/** What the system said about a file, as a sentence with a remedy; an error that is not the system's is given back. */
export function fileProblem(error: unknown, path: string): Error {
  if (!(error instanceof Error)) return new Error(String(error));
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  const found = sentences[code];
  if (found === undefined) return error;
  return new InputProblem(`file-${code.toLowerCase()}`, found[0], basename(path), found[1]);
}
