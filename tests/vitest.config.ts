import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { longestFirst } from './helpers/longestFirst.ts';

// Beside the check of types and lint, which comes first, a long one takes several times as long as alone.
const testTimeout = 90_000;

/**
 * The tests of the engine, of the command line and of all else that Node runs go as Node runs them, in half the time the
 * default runner takes, and share what is loaded, since nothing there keeps a state. Tests of the window and of the desktop
 * program, and those that put another module in place of one, start afresh in the default runner.
 */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    // Left alone it would keep one core free.
    maxWorkers: '100%',
    sequence: {
      sequencer: longestFirst(['contention.mocked.test.ts', 'gdal.test.ts', 'reasonsFor.test.ts']),
    },
    projects: [
      {
        test: {
          name: 'engine',
          include: ['tests/{unit,published,property,lint,main}/**/*.test.{ts,tsx}'],
          exclude: ['tests/unit/renderer/**', 'tests/main/app/**', '**/*.mocked.test.ts'],
          testTimeout,
          isolate: false,
          experimental: { viteModuleRunner: false },
          execArgv: ['--import', 'tsx'],
        },
      },
      {
        resolve: { alias: { electron: resolve(import.meta.dirname, 'stubs/electron.ts') } },
        test: {
          name: 'programs',
          include: ['tests/{unit/renderer,main/app}/**/*.test.{ts,tsx}', 'tests/**/*.mocked.test.ts'],
          testTimeout,
        },
      },
    ],
  },
});
