import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const here = (path: string): string => resolve(import.meta.dirname, path);

export default defineConfig({
  main: {
    build: {
      outDir: here('out/main'),
      rolldownOptions: {
        input: {
          main: here('main/app/main.ts'),
          cli: here('main/cli/swale.ts'),
          planWorker: here('main/cli/planWorker.ts'),
        },
        // Constants stay constants, as they do in the workers of the window: the engine of shots counts on it for a fifth of
        // its speed.
        output: { topLevelVar: false },
      },
    },
  },
  preload: {
    build: {
      outDir: here('out/preload'),
      // A sandboxed preload script is loaded as CommonJS.
      rolldownOptions: {
        input: { preload: here('main/preload/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: here('renderer'),
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: here('out/renderer'),
      emptyOutDir: true,
      minify: true,
      chunkSizeWarningLimit: 1500,
      rolldownOptions: { input: { index: here('renderer/index.html') } },
    },
  },
});
