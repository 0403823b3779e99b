import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { atlasFiles } from '../../../main/files/atlasFiles.ts';
import { backupFolder, BACKUPS_KEPT } from '../../../main/files/backups.ts';
import { writeAtomic } from '../../../main/files/writeAtomic.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';

const leftovers = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith('.part'));

it('replaces a file whole, keeping its permissions and leaving nothing else behind', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'a.geojson');
  writeFileSync(path, 'old');
  chmodSync(path, 0o600);
  await writeAtomic(path, 'new');
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(statSync(path).mode & 0o777).toBe(0o600);
  expect(readdirSync(folder)).toEqual(['a.geojson']);
});

it('writes through a link to the file behind it', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'real'), 'old');
  symlinkSync(join(folder, 'real'), join(folder, 'link'));
  await writeAtomic(join(folder, 'link'), 'new');
  expect(readFileSync(join(folder, 'real'), 'utf8')).toBe('new');
});

it('leaves the old file and no remains where the write fails', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'taken'));
  await expect(writeAtomic(join(folder, 'taken'), 'new')).rejects.toMatchObject({ code: 'EISDIR' });
  expect(leftovers(folder)).toEqual([]);
});

it('keeps the state before each save, the newest ones only', async () => {
  const folder = temporaryFolder();
  const backups = join(folder, 'backups');
  const path = join(folder, 'a.geojson');
  writeFileSync(path, 'state 0');
  const files = atlasFiles(backups);
  const { handle } = await files.open(path);
  const saves = BACKUPS_KEPT + 3;
  for (let n = 1; n <= saves; n += 1) {
    utimesSync(path, n, n); // as if a second had passed
    await files.save(handle, `state ${n}`);
  }
  const kept = backupFolder(backups, path);
  const contents = readdirSync(kept)
    .sort()
    .map((name) => readFileSync(join(kept, name), 'utf8'));
  expect(contents).toEqual(
    Array.from({ length: BACKUPS_KEPT }, (_, i) => `state ${saves - BACKUPS_KEPT + i}`),
  );
  expect(readFileSync(path, 'utf8')).toBe(`state ${saves}`);
});

it('leaves a file alone that something else has changed since', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'a.geojson');
  writeFileSync(path, 'mine');
  const files = atlasFiles(join(folder, 'backups'));
  const { handle } = await files.open(path);
  writeFileSync(path, 'theirs');
  await expect(files.save(handle, 'mine again')).rejects.toMatchObject({ code: 'file-changed' });
  expect(readFileSync(path, 'utf8')).toBe('theirs');
  expect(readdirSync(folder)).toEqual(['a.geojson']);
});

it('writes a file again that was taken away, since nothing can be lost by it', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'a.geojson');
  const files = atlasFiles(join(folder, 'backups'));
  const { handle, fileName } = await files.saveAs(path, 'one');
  expect(fileName).toBe('a.geojson');
  await files.save(handle, 'two');
  expect(readFileSync(path, 'utf8')).toBe('two');
});

it('explains what it cannot open', async () => {
  const folder = temporaryFolder();
  const files = atlasFiles(join(folder, 'backups'));
  await expect(files.open(join(folder, 'none'))).rejects.toMatchObject({ code: 'file-enoent' });
  await expect(files.open(folder)).rejects.toMatchObject({ code: 'file-eisdir' });
  await expect(files.save('made up', '')).rejects.toMatchObject({ code: 'file-unknown' });
});
