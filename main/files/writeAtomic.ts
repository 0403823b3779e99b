import { randomUUID } from 'node:crypto';
import { open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a file so that at every moment, and after a power cut, its place holds either all of the old content or all of
 * the new: a temporary file in the same folder, flushed to the disk, then renamed over. A link is followed, and the
 * permissions of a file that is replaced are kept. Throws the system's error and leaves nothing behind.
 */
export async function writeAtomic(path: string, content: string | Uint8Array): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const mode = await stat(target).then(
    (found) => found.mode & 0o777,
    () => 0o644,
  );
  const temporary = join(dirname(target), `.${basename(target)}.${randomUUID()}.part`);
  try {
    const file = await open(temporary, 'wx', mode);
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
  await syncFolder(dirname(target));
}

/** Makes the rename itself last. Windows has no such call on folders, and needs none. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
