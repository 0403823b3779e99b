/**
 * Which room may import which, and which packages it may use: everything not said here is refused. A folder takes in the
 * folders below it, save where `direct` says that only the files lying in it are meant. `types` are rooms of which only
 * the types may be imported. A room may always import itself.
 *
 * @typedef {{ imports?: readonly string[], types?: readonly string[], packages?: readonly string[],
 *   typePackages?: readonly string[], direct?: boolean }} Room
 */

const lowest = ['shared/words', 'shared/numeric', 'shared/units', 'shared/random'];
const ground = [...lowest, 'shared/geometry', 'shared/atlas', 'shared/terrain'];
const engine = [...ground, 'shared/ball', 'shared/player', 'shared/planner'];
const pages = [...engine, 'shared/plate', 'shared/playbook'];
const allShared = [...pages, 'shared/formats', 'shared/exchange', 'shared/protocol'];

const react = ['react', 'react-dom', 'lucide-react', 'zustand'];
const windowBase = ['renderer/ui', 'renderer/bridge', 'renderer/library', 'renderer/workers'];
const windowParts = [...windowBase, 'renderer/store', 'renderer/map'];
const screens = ['survey', 'positions', 'plan', 'playbook', 'player', 'practice', 'bringin'].map(
  (name) => `renderer/${name}`,
);

/** @type {Readonly<Record<string, Room>>} */
export const rooms = {
  'shared/words': {},
  'shared/numeric': {},
  'shared/units': { imports: ['shared/words', 'shared/numeric'] },
  'shared/random': { imports: ['shared/numeric'] },
  'shared/geometry': {
    imports: ['shared/units', 'shared/numeric', 'shared/words'],
    packages: ['@turf/turf', 'geographiclib-geodesic'],
    typePackages: ['geojson'],
  },
  'shared/atlas': {
    imports: ['shared/words', 'shared/units', 'shared/numeric', 'shared/geometry'],
    packages: ['zod'],
    typePackages: ['geojson'],
  },
  'shared/formats': {
    imports: ['shared/atlas', 'shared/geometry', 'shared/units', 'shared/words', 'shared/numeric'],
    packages: ['zod', 'fflate', 'geotiff', 'proj4', 'saxes'],
    typePackages: ['geojson'],
  },
  'shared/terrain': {
    imports: ['shared/geometry', 'shared/numeric', 'shared/random', 'shared/units', 'shared/words'],
    packages: ['delaunator', 'd3-contour', '@turf/turf'],
    typePackages: ['geojson'],
  },
  'shared/ball': {
    imports: ['shared/units', 'shared/words', 'shared/numeric', 'shared/random'],
    packages: ['zod'],
  },
  'shared/player': {
    imports: ['shared/ball', 'shared/units', 'shared/words', 'shared/numeric', 'shared/random'],
    types: ['shared/atlas'],
  },
  'shared/planner': { imports: [...ground, 'shared/ball', 'shared/player'] },
  'shared/plate': { imports: engine, packages: ['d3-scale-chromatic', 'd3-contour'] },
  'shared/playbook': { imports: [...engine, 'shared/plate'] },
  'shared/exchange': { imports: [...engine, 'shared/formats', 'shared/protocol'] },
  'shared/protocol': { imports: ['shared/words'], types: allShared, packages: ['zod'] },

  main: { imports: ['main/pages', 'main/web'], packages: ['node:*'], direct: true },
  'main/files': { imports: ['shared/words'], types: ['shared/protocol'], packages: ['node:*'] },
  'main/pages': { packages: ['node:*'] },
  'main/web': { imports: ['main/pages'], packages: ['node:*'] },
  'main/ipc': { imports: ['shared/words', 'shared/protocol'], packages: ['electron'] },
  'main/preload': { imports: ['main/ipc'], types: ['shared/protocol'], packages: ['electron'] },
  'main/app': {
    imports: ['main/files', 'main/pages', 'main/ipc', 'shared/words', 'shared/protocol', 'sample-course'],
    packages: ['electron', 'node:*'],
  },
  'main/cli': {
    imports: [...allShared, 'main/files'],
    packages: ['node:*', 'tsx', 'zod'],
  },

  'renderer/ui': { imports: [...lowest, 'shared/plate'], types: allShared, packages: react },
  'renderer/bridge': { imports: ['shared/words', 'shared/protocol', 'sample-course'], types: allShared },
  'renderer/library': {
    imports: [...ground, 'shared/formats', 'renderer/workers'],
    types: allShared,
    packages: ['dexie', 'dexie-react-hooks'],
  },
  'renderer/workers': { imports: allShared, packages: ['comlink'] },
  'renderer/store': { imports: [...allShared, ...windowBase], packages: [...react, 'comlink'] },
  'renderer/map': {
    imports: [...allShared, 'renderer/ui', 'renderer/store'],
    packages: [...react, 'leaflet', '@geoman-io/leaflet-geoman-free'],
    typePackages: ['geojson'],
  },
  ...Object.fromEntries(
    screens.map((folder) => [folder, { imports: [...allShared, ...windowParts], packages: react }]),
  ),
  renderer: {
    imports: [...allShared, ...windowParts, ...screens],
    packages: [...react, '@fontsource/atkinson-hyperlegible-next', '@fontsource/source-serif-4'],
    direct: true,
  },

  'sample-course': { imports: allShared, packages: ['node:*'] },

  tests: {
    imports: [
      ...allShared,
      'sample-course',
      'main',
      'renderer',
      ...['files', 'pages', 'web', 'ipc', 'preload', 'app', 'cli'].map((name) => `main/${name}`),
      ...windowParts,
      ...screens,
    ],
    packages: [
      'node:*',
      'vitest',
      'fast-check',
      'fake-indexeddb',
      'happy-dom',
      'playwright-core',
      '@axe-core/playwright',
      'geographiclib-geodesic',
      'eslint',
      '@eslint/js',
      'typescript',
      'typescript-eslint',
      'eslint-plugin-react-hooks',
      'electron',
      'leaflet',
      'react',
      'react-dom',
      'zod',
      'delaunator',
      'fflate',
      'geotiff',
      'ml-matrix',
      'odex', // read through require: it ships no types
      'vite',
      '@turf/turf',
      '@electron/asar',
    ],
    typePackages: ['geojson'],
  },
  '.': { packages: ['node:*', 'electron-vite', '@vitejs/plugin-react'], direct: true },
};

/** Packages that no file imports: compilers, runners, type packages and packagers. */
export const tools = [
  '@types/*',
  'electron-builder',
  'prettier',
  '@prettier/plugin-oxc',
  'vite', // read by electron-vite and vitest
  'vega-datasets', // an open elevation grid that tests read as a file
];

/**
 * The room of a file, by its path from the root of the repository with forward slashes; null where there is none.
 * @param {string} path
 * @returns {string | null}
 */
export function roomOf(path) {
  const folders = path.split('/').slice(0, -1);
  for (let n = folders.length; n >= 0; n -= 1) {
    const folder = n === 0 ? '.' : folders.slice(0, n).join('/');
    const room = rooms[folder];
    if (room !== undefined) return room.direct === true && n < folders.length ? null : folder;
  }
  return null;
}

/**
 * The package of an import such as "@scope/name/part"; every builtin of Node counts as "node:*".
 * @param {string} specifier
 */
export function packageOf(specifier) {
  if (specifier.startsWith('node:')) return 'node:*';
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? specifier);
}
