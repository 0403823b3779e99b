import { createHash, randomUUID } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { OpenedFile } from '../../shared/protocol/host.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { keepBackup } from './backups.ts';
import { fileProblem } from './fileProblem.ts';
import { writeAtomic } from './writeAtomic.ts';

/** An atlas of a whole course with every reading is some megabytes, and some pictures more; this is something else. */
const LARGEST_BYTES = 256 * 1024 * 1024;

/** Reads and writes atlas files for a window that knows them only by handles. All methods throw InputProblem. */
export interface AtlasFiles {
  open(path: string): Promise<OpenedFile>;
  /** Writes back to the place of a handle; refuses where the file there is no longer the one that was read. */
  save(handle: string, content: string | Uint8Array): Promise<void>;
  /** Writes to a place the person chose, where the system's dialog has asked before replacing anything. */
  saveAs(
    path: string,
    content: string | Uint8Array,
  ): Promise<{ readonly handle: string; readonly fileName: string }>;
}

/** @param backupRoot folder in which every file that is about to be replaced is kept first */
export function atlasFiles(backupRoot: string): AtlasFiles {
  const known = new Map<string, { readonly path: string; fingerprint: string }>();
  const remember = (path: string, content: string | Uint8Array): string => {
    const handle = randomUUID();
    known.set(handle, { path, fingerprint: fingerprintOf(content) });
    return handle;
  };
  const replace = async (
    path: string,
    before: Uint8Array | null,
    content: string | Uint8Array,
  ): Promise<void> => {
    if (before !== null) await keepBackup(backupRoot, path, before);
    await writeAtomic(path, content);
  };

  return {
    async open(path) {
      const content = await contentOf(path);
      if (content === null) throw fileProblem(Object.assign(new Error(), { code: 'ENOENT' }), path);
      return { handle: remember(path, content), fileName: basename(path), content };
    },

    async save(handle, content) {
      const file = known.get(handle);
      if (file === undefined)
        throw new InputProblem('file-unknown', 'The place of this file is not known.', '', 'Use Save as.');
      try {
        const before = await contentOf(file.path);
        if (before !== null && fingerprintOf(before) !== file.fingerprint)
          throw new InputProblem(
            'file-changed',
            'the file was changed by something else since it was opened, so it was left alone.',
            basename(file.path),
            'Use Save as to keep your version beside it.',
          );
        await replace(file.path, before, content);
        file.fingerprint = fingerprintOf(content);
      } catch (error) {
        throw fileProblem(error, file.path);
      }
    },

    async saveAs(path, content) {
      try {
        await replace(path, await contentOf(path), content);
        return { handle: remember(path, content), fileName: basename(path) };
      } catch (error) {
        throw fileProblem(error, path);
      }
    },
  };
}

const fingerprintOf = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex');

/** Content of a file, or null where there is none. */
async function contentOf(path: string): Promise<Uint8Array | null> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST_BYTES)
      throw new InputProblem(
        'file-too-large',
        `the file has ${Math.round(size / 1024 / 1024)} MB, far more than an atlas can.`,
        basename(path),
        'Choose an atlas file.',
      );
    return await readFile(path);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw fileProblem(error, path);
  }
}
