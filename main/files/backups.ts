import { createHash } from 'node:crypto';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { basename, extname, join, resolve } from 'node:path';
import { writeAtomic } from './writeAtomic.ts';

/** How many earlier states of one file are kept. */
export const BACKUPS_KEPT = 20;

/** Folder of the backups of one file: files of the same name in other folders have their own. */
export function backupFolder(root: string, path: string): string {
  const place = createHash('sha256').update(resolve(path)).digest('hex').slice(0, 8);
  return join(root, `${basename(path)}-${place}`);
}

/** Keeps `content`, which is about to be replaced at `path`, under the time it was last changed; drops the oldest. */
export async function keepBackup(root: string, path: string, content: Uint8Array): Promise<void> {
  const folder = backupFolder(root, path);
  await mkdir(folder, { recursive: true });
  const changed = (await stat(path)).mtime.toISOString().replaceAll(':', '-');
  await writeAtomic(join(folder, `${changed}${extname(path)}`), content);
  const kept = (await readdir(folder)).filter((name) => !name.startsWith('.')).sort();
  for (const name of kept.slice(0, -BACKUPS_KEPT)) await rm(join(folder, name));
}
