/**
 * Runs a benchmark of this folder as the app ships the code that it measures: in one module, by the app's own bundler. That
 * is a sixth to a fifth faster than module by module. `npx tsx tests/bench/asShipped.ts NAME [its arguments]`.
 */
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const [name, ...rest] = process.argv.slice(2);
if (name === undefined) throw new Error('Name a benchmark: npx tsx tests/bench/asShipped.ts shots');
const outDir = resolve(import.meta.dirname, '..', '..', 'out', 'bench');
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: resolve(import.meta.dirname, `${name}.ts`),
    outDir,
    emptyOutDir: false,
    rolldownOptions: { output: { topLevelVar: false } },
  },
});
const { status } = spawnSync(process.execPath, [join(outDir, `${name}.js`), ...rest], { stdio: 'inherit' });
process.exitCode = status ?? 1;
