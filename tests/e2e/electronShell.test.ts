import { resolve } from 'node:path';
import { _electron } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findElectron } from '../../main/find-electron.ts';
import { hasDisplay } from '../../main/open-browser.ts';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';

const root = resolve(import.meta.dirname, '..', '..');
const runtime = findElectron(root, process.env);
const reason = !runtime.found
  ? `no Electron binary at ${runtime.path} (run "npx install-electron", or set ELECTRON_OVERRIDE_DIST_PATH)`
  : !hasDisplay(process.platform, process.env)
    ? 'no display'
    : null;
if (reason !== null) console.log(`SKIP electron shell test: ${reason}`);

describe.skipIf(reason !== null)('the desktop program', () => {
  it('shows its page in a window that can reach nothing but its host', async () => {
    const program = await _electron.launch({
      executablePath: runtime.path,
      args: [`--user-data-dir=${temporaryFolder()}`, root],
    });
    try {
      const page = await program.firstWindow();
      await page.waitForSelector('#root > *');
      expect(page.url()).toBe('app://swale/');
      expect(await page.title()).toContain('Swale');
      const seen = await page.evaluate(() => ({
        host: Object.keys((globalThis as { readonly swaleHost?: object }).swaleHost ?? {}).length,
        node: 'process' in globalThis || 'require' in globalThis,
      }));
      expect(seen).toMatchObject({ host: 5, node: false });
    } finally {
      await program.close();
    }
  });
});
