import { mkdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isBuildStale } from '../../main/build-state.ts';
import { findChromium } from '../../main/cli/findChromium.ts';
import { findElectron } from '../../main/find-electron.ts';
import { browserCommand, hasDisplay } from '../../main/open-browser.ts';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';

/** Makes a file, last changed so many seconds after 1970. */
function touch(path: string, seconds: number): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, '');
  utimesSync(path, seconds, seconds);
  utimesSync(dirname(path), 1, 1);
}

describe('whether to build', () => {
  const tree = (): { root: string; source: string } => {
    const root = temporaryFolder();
    const source = join(root, 'shared', 'ball', 'roll.ts');
    touch(source, 10);
    touch(join(root, 'package.json'), 10);
    utimesSync(join(root, 'shared'), 1, 1);
    touch(join(root, 'out', 'renderer', 'index.html'), 20);
    return { root, source };
  };

  it('does not where the build is newer than every source', () => {
    expect(isBuildStale(tree().root)).toBe(false);
  });
  it('does where there is none', () => {
    const { root } = tree();
    rmSync(join(root, 'out'), { recursive: true });
    expect(isBuildStale(root)).toBe(true);
  });
  it('does where a source is newer, or was taken away', () => {
    const changed = tree();
    touch(changed.source, 30);
    expect(isBuildStale(changed.root)).toBe(true);
    const removed = tree();
    rmSync(removed.source);
    expect(isBuildStale(removed.root)).toBe(true);
  });
});

describe('where Electron is', () => {
  it('is its package, unless the environment says otherwise', () => {
    const root = temporaryFolder();
    const dist = join(root, 'node_modules', 'electron', 'dist');
    touch(join(root, 'node_modules', 'electron', 'path.txt'), 1);
    writeFileSync(join(root, 'node_modules', 'electron', 'path.txt'), 'electron-here');
    expect(findElectron(root, {})).toEqual({ path: join(dist, 'electron-here'), found: false });
    touch(join(dist, 'electron-here'), 1);
    expect(findElectron(root, {}).found).toBe(true);
    expect(findElectron(root, { ELECTRON_OVERRIDE_DIST_PATH: '/opt/e' }).path).toBe(
      join('/opt/e', 'electron-here'),
    );
    expect(
      findElectron(root, { ELECTRON_EXEC_PATH: '/opt/e/run', ELECTRON_OVERRIDE_DIST_PATH: '/x' }).path,
    ).toBe('/opt/e/run');
  });
});

describe('which browser to open', () => {
  it('is the one of the system, if anyone can see it', () => {
    const bin = temporaryFolder();
    touch(join(bin, 'xdg-open'), 1);
    const url = 'http://127.0.0.1:1/';
    expect(browserCommand(url, 'darwin', {})).toEqual(['open', url]);
    expect(browserCommand(url, 'win32', {})).toEqual(['cmd', '/c', 'start', '', url]);
    expect(browserCommand(url, 'linux', { DISPLAY: ':0', PATH: bin })).toEqual([join(bin, 'xdg-open'), url]);
    expect(browserCommand(url, 'linux', { WAYLAND_DISPLAY: 'w', PATH: `/none:${bin}` })).not.toBeNull();
    expect(browserCommand(url, 'linux', { DISPLAY: ':0', PATH: '/none' })).toBeNull();
    expect(browserCommand(url, 'linux', { PATH: bin })).toBeNull();
    expect(browserCommand(url, 'darwin', { CI: 'true' })).toBeNull();
    expect(hasDisplay('linux', {})).toBe(false);
  });
});

describe('where Chromium is', () => {
  it('is on the path, or where CHROME_PATH says and nowhere else', () => {
    const bin = temporaryFolder();
    touch(join(bin, 'chromium'), 1);
    expect(findChromium({ PATH: bin })).toBe(join(bin, 'chromium'));
    expect(findChromium({ PATH: bin, CHROME_PATH: join(bin, 'missing') })).toBeNull();
    touch(join(bin, 'other'), 1);
    expect(findChromium({ PATH: bin, CHROME_PATH: join(bin, 'other') })).toBe(join(bin, 'other'));
    touch(join(bin, 'chromium-headless-shell'), 1);
    expect(findChromium({ PATH: bin })).toBe(join(bin, 'chromium-headless-shell'));
  });
});
