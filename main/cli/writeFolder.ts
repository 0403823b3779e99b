import { mkdir, mkdtemp, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { fileProblem } from '../files/fileProblem.ts';

/**
 * Fills a folder so that nothing half-made is ever in it: `fill` works in a folder beside it, whose files are moved into
 * place when it has ended well. Other files that are there already stay. Throws InputProblem where it cannot.
 */
export async function writeFolder(folder: string, fill: (draft: string) => Promise<void>): Promise<void> {
  const target = resolve(folder);
  try {
    const existing = await stat(target).catch(() => null);
    if (existing !== null && !existing.isDirectory())
      throw new InputProblem('not-a-folder', 'this is a file.', basename(target), 'Name a folder.');
    const draft = await mkdtemp(join(await existingAbove(target), '.swale-draft-'));
    try {
      await fill(draft);
      await mkdir(target, { recursive: true });
      for (const name of await readdir(draft)) await rename(join(draft, name), join(target, name));
    } finally {
      await rm(draft, { recursive: true, force: true });
    }
  } catch (error) {
    throw fileProblem(error, target);
  }
}

/** The nearest folder above that exists: on the same disk, so that moving is renaming. */
async function existingAbove(path: string): Promise<string> {
  const above = dirname(path);
  if (above === path) return path;
  const found = await stat(above).catch(() => null);
  if (found === null) return existingAbove(above);
  if (!found.isDirectory())
    throw new InputProblem('not-a-folder', 'this is a file.', basename(above), 'Name a folder.');
  return above;
}
