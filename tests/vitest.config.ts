import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  resolve: { alias: { electron: resolve(import.meta.dirname, 'stubs/electron.ts') } },
  test: {
    include: ['tests/{unit,published,property,main,lint}/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    // Left alone it would keep one core free.
    maxWorkers: '100%',
  },
});
