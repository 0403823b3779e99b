import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { startLoopbackHost } from '../../main/web/loopbackHost.ts';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';

const root = resolve(import.meta.dirname, '..', '..');

interface Started {
  readonly child: ChildProcess;
  readonly output: () => string;
  readonly ended: Promise<number | null>;
}

/** `npm start` without npm, in an environment that is told to it whole. */
function start(env: Readonly<Record<string, string>>): Started {
  const child = spawn(process.execPath, ['--import', 'tsx', join(root, 'main', 'start.ts')], {
    cwd: root,
    env: { PATH: process.env['PATH'] ?? '', HOME: process.env['HOME'] ?? '', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (part: string) => (text += part));
  const ended = new Promise<number | null>((done) => child.on('close', done));
  onTestFinished(async () => {
    child.kill();
    await ended;
  });
  return { child, output: () => text, ended };
}

/** A port that was free a moment ago. */
async function freePort(): Promise<string> {
  const host = await startLoopbackHost(root, 0);
  await host.close();
  return new URL(host.url).port;
}

/** Stands in for Electron's executable: leaves a note of how it was called, and ends with a code. */
function fakeElectron(code: number): { readonly folder: string; readonly called: () => string } {
  const folder = temporaryFolder();
  const note = join(folder, 'called.txt');
  writeFileSync(join(folder, 'electron'), `#!/bin/sh\necho "$@" > "${note}"\nexit ${code}\n`);
  chmodSync(join(folder, 'electron'), 0o755);
  return { folder, called: () => (existsSync(note) ? readFileSync(note, 'utf8').trim() : '') };
}

describe.skipIf(process.platform === 'win32')('npm start', () => {
  it('opens the desktop program where there is a runtime, and ends with its code', async () => {
    const { folder, called } = fakeElectron(7);
    const { ended, output } = start({ DISPLAY: ':99', ELECTRON_OVERRIDE_DIST_PATH: folder });
    expect(await ended, output()).toBe(7);
    const sandbox = process.getuid?.() === 0 ? '--no-sandbox ' : '';
    expect(called()).toBe(`${sandbox}${root}`);
  });

  it('serves the window in one line where there is no runtime', async () => {
    const port = await freePort();
    const { child, ended, output } = start({
      DISPLAY: ':99',
      CI: '1',
      PORT: port,
      ELECTRON_SKIP_BINARY_DOWNLOAD: '1',
      ELECTRON_OVERRIDE_DIST_PATH: join(temporaryFolder(), 'nothing'),
    });
    await expect.poll(output, { timeout: 60_000 }).toContain('Ctrl+C');
    expect(output()).toBe(
      `No desktop window (no Electron runtime): Swale is at http://127.0.0.1:${port}/ in your browser until Ctrl+C.\n`,
    );
    expect(await (await fetch(`http://127.0.0.1:${port}/`)).text()).toContain('<title>Swale</title>');
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  });

  it('serves the window where the runtime cannot run', async () => {
    const { folder } = fakeElectron(127);
    const port = await freePort();
    const { output } = start({ DISPLAY: ':99', CI: '1', PORT: port, ELECTRON_OVERRIDE_DIST_PATH: folder });
    await expect
      .poll(output, { timeout: 60_000 })
      .toContain('the Electron runtime does not run on this system');
  });

  it('does not try the desktop without a display', async () => {
    const { folder, called } = fakeElectron(0);
    const port = await freePort();
    const { output } = start({ PORT: port, ELECTRON_OVERRIDE_DIST_PATH: folder });
    const expected = process.platform === 'linux' ? 'no display' : 'Ctrl+C';
    await expect.poll(output, { timeout: 60_000 }).toContain(expected);
    if (process.platform === 'linux') expect(called()).toBe('');
  });

  it('opens the default browser on the page', async () => {
    const folder = temporaryFolder();
    const note = join(folder, 'opened.txt');
    mkdirSync(join(folder, 'bin'));
    writeFileSync(join(folder, 'bin', 'xdg-open'), `#!/bin/sh\necho "$1" > "${note}"\n`);
    chmodSync(join(folder, 'bin', 'xdg-open'), 0o755);
    const port = await freePort();
    start({
      DISPLAY: ':99',
      PORT: port,
      PATH: `${join(folder, 'bin')}:${process.env['PATH'] ?? ''}`,
      ELECTRON_SKIP_BINARY_DOWNLOAD: '1',
      ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'nothing'),
    });
    await expect
      .poll(() => (existsSync(note) ? readFileSync(note, 'utf8').trim() : ''), { timeout: 60_000 })
      .toBe(`http://127.0.0.1:${port}/`);
  });

  it('says plainly that its port is taken, or wrong', async () => {
    const host = await startLoopbackHost(root, 0);
    onTestFinished(() => host.close());
    const { port } = new URL(host.url);
    const taken = start({ PORT: port });
    expect(await taken.ended).toBe(1);
    expect(taken.output()).toMatch(new RegExp(`^swale: Port ${port} is taken\\.[^\\n]*\\n$`));
    const wrong = start({ PORT: 'http' });
    expect(await wrong.ended).toBe(1);
    expect(wrong.output()).toBe('swale: PORT is "http": give a whole number from 1 to 65535.\n');
  });
});
