import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const testTimeout = 30_000;

/**
 * The engine's tests run as Node runs the engine, in half the time the default runner takes, and share what is loaded, since
 * nothing there keeps a state. Tests of the window and of the programs, and those that put another module in place of one,
 * start afresh in the default runner.
 */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    // Left alone it would keep one core free.
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'engine',
          include: ['tests/{unit,published,property}/**/*.test.{ts,tsx}'],
          exclude: ['tests/unit/renderer/**', '**/*.mocked.test.ts'],
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
          include: ['tests/{unit/renderer,main,lint}/**/*.test.{ts,tsx}', 'tests/**/*.mocked.test.ts'],
          testTimeout,
        },
      },
    ],
  },
});
