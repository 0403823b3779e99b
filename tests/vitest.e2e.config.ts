import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { longestFirst } from './helpers/longestFirst.ts';

const times = { testTimeout: 120_000, hookTimeout: 60_000 };
const besideTheEngine = ['tests/e2e/samePlan.e2e.test.ts'];

/** Tests of the built program, from outside: `npm run build` first. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    maxWorkers: 2,
    sequence: {
      sequencer: longestFirst([
        ...['decide.e2e.test.ts', 'window.e2e.test.ts', 'survey.e2e.test.ts', 'cli.test.ts'],
        ...['pictures.e2e.test.ts', 'bringin.e2e.test.ts', 'samePlan.e2e.test.ts', 'files.e2e.test.ts'],
        ...['workspaces.e2e.test.ts', 'package.test.ts'],
      ]),
    },
    projects: [
      {
        // Runs the engine as well, and so as Node runs it: see vitest.config.ts.
        test: {
          ...times,
          name: 'beside the engine',
          include: besideTheEngine,
          experimental: { viteModuleRunner: false },
          execArgv: ['--import', 'tsx'],
        },
      },
      {
        test: {
          ...times,
          name: 'built',
          // One browser and one load of what drives it for many files: a context in it shares nothing, and each file asks for its own.
          isolate: false,
          include: ['tests/e2e/**/*.test.ts'],
          exclude: besideTheEngine,
          // A test plans too little to win back what the last of the compilers costs, a fifth of all its work. The engine in a
          // window as people have it is looked at beside the engine in Node, and by the benchmarks.
          env: { CHROMIUM_FLAGS: '--js-flags=--no-turbofan' },
        },
      },
    ],
  },
});
