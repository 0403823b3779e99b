import { spawn } from 'node:child_process';
import { copyFileSync, appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { listPackage } from '@electron/asar';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';

const root = resolve(import.meta.dirname, '..', '..');

/** Where Electron's fuses lie in its executable, the version of their layout, how many, and their state as built. */
const FUSE_WIRE = Buffer.concat([
  Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'),
  Buffer.from([1, 8]),
  Buffer.from('00000000'),
]);

/** As much of an unpacked Electron as the packager reads: no runtime is fetched for this test. */
function fakeDist(folder: string): string {
  const dist = join(folder, 'electron');
  mkdirSync(join(dist, 'locales'), { recursive: true });
  mkdirSync(join(dist, 'resources'));
  copyFileSync('/bin/true', join(dist, 'electron'));
  appendFileSync(join(dist, 'electron'), FUSE_WIRE);
  const { version } = JSON.parse(
    readFileSync(join(root, 'node_modules', 'electron', 'package.json'), 'utf8'),
  ) as { readonly version: string };
  writeFileSync(join(dist, 'version'), version);
  for (const name of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'locales/en-US.pak'])
    writeFileSync(join(dist, name), 'stand-in');
  return dist;
}

function run(script: string, args: readonly string[]): Promise<{ code: number | null; output: string }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', script), ...args], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (part: string) => (output += part));
    child.on('close', (code) => done({ code, output }));
  });
}

// The stand-in is a Linux program.
describe.skipIf(process.platform !== 'linux')('the packaged program', () => {
  it('holds the build and nothing else, under locked fuses', async () => {
    const folder = temporaryFolder();
    const packed = await run('electron-builder/cli.js', [
      ...['--linux', '--dir', '--publish', 'never'],
      `-c.electronDist=${fakeDist(folder)}`,
      `-c.directories.output=${join(folder, 'dist')}`,
    ]);
    expect(packed.code, packed.output).toBe(0);
    const program = join(folder, 'dist', 'linux-unpacked');
    expect(existsSync(join(program, 'swale'))).toBe(true);

    const files = listPackage(join(program, 'resources', 'app.asar'), { isPack: false });
    const tops = new Set(files.map((path) => path.split('/').slice(1, 3).join('/')));
    expect([...tops].sort()).toEqual([
      'LICENSE',
      'out',
      'out/main',
      'out/preload',
      'out/renderer',
      'package.json',
    ]);
    for (const path of ['/out/main/main.js', '/out/preload/preload.cjs', '/out/renderer/index.html'])
      expect(files).toContain(path);

    const fuses = await run('@electron/fuses/dist/bin.js', ['read', '--app', join(program, 'swale')]);
    expect(
      fuses.output
        .split('\n')
        .filter((line) => / is (Enabled|Disabled)/.test(line))
        .map((line) => line.trim()),
    ).toEqual([
      'RunAsNode is Disabled',
      'EnableCookieEncryption is Enabled',
      'EnableNodeOptionsEnvironmentVariable is Disabled',
      'EnableNodeCliInspectArguments is Disabled',
      'EnableEmbeddedAsarIntegrityValidation is Enabled',
      'OnlyLoadAppFromAsar is Enabled',
      'LoadBrowserProcessSpecificV8Snapshot is Disabled',
      'GrantFileProtocolExtraPrivileges is Disabled',
    ]);
  });
});
