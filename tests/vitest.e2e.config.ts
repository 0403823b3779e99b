import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** Tests of the built program, from outside: `npm run build` first. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/e2e/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
  },
});
