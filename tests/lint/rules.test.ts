import { resolve } from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..', '..');
// Rules that need no types are enough here, and the sources tried out exist in no project.
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: resolve(root, 'tests', 'eslint.config.mjs'),
  overrideConfig: {
    files: ['**/*.ts'],
    languageOptions: { parserOptions: { projectService: false, project: null } },
  },
  ruleFilter: ({ ruleId }) => ruleId.startsWith('no-restricted-'),
});

async function complaints(path: string, code: string): Promise<readonly string[]> {
  const [result] = await eslint.lintText(code, { filePath: resolve(root, path) });
  if (result === undefined || result.fatalErrorCount > 0) throw new Error('not linted');
  return result.messages.map(({ ruleId }) => ruleId ?? 'syntax');
}

describe('shared/ knows neither host, clock nor chance', () => {
  it.each([
    'export const t = Date.now();',
    'export const t = new Date();',
    'export const t = Date();',
    'export const r = Math.random();',
    'export const w = window.innerWidth;',
    'export const d = document.title;',
    'export const e = process.env;',
    'export const b = Buffer.from("");',
    'console.log(1);',
    'setTimeout(() => 1, 1);',
    'export const n = performance.now();',
  ])('%s', async (code) => {
    expect(await complaints('shared/atlas/tried.ts', code)).toHaveLength(1);
    expect(await complaints('shared/planner/tried.ts', code)).toHaveLength(1);
    expect(await complaints('tests/unit/tried.ts', code)).toEqual([]);
  });

  it('lets a time that is given be turned into a date', async () => {
    expect(
      await complaints('shared/atlas/tried.ts', 'export const at = (ms: number) => new Date(ms);'),
    ).toEqual([]);
  });
});

describe('the engine uses only arithmetic that every machine does alike', () => {
  const loose = ['sin', 'cos', 'tan', 'atan2', 'asin', 'exp', 'log', 'pow', 'hypot', 'cbrt', 'log10', 'sinh'];
  it.each(loose)('Math.%s', async (name) => {
    const code = `export const f = (x: number) => Math.${name}(x, 1);`;
    for (const layer of ['terrain', 'ball', 'player', 'planner'])
      expect(await complaints(`shared/${layer}/tried.ts`, code)).toEqual(['no-restricted-properties']);
    expect(await complaints('shared/geometry/tried.ts', code)).toEqual([]);
  });

  it('refuses the power operator', async () => {
    expect(await complaints('shared/ball/tried.ts', 'export const f = (x: number) => x ** 1.5;')).toEqual([
      'no-restricted-syntax',
    ]);
    expect(await complaints('shared/ball/tried.ts', 'export let x = 2; x **= 2;')).toEqual([
      'no-restricted-syntax',
    ]);
  });

  it('lets exact functions through', async () => {
    const exact =
      'Math.sqrt(2) + Math.abs(1) + Math.min(1, 2) + Math.floor(1.5) + Math.round(2.5) + Math.sign(-1)';
    expect(await complaints('shared/ball/tried.ts', `export const x = ${exact};`)).toEqual([]);
  });
});

describe('messages between processes', () => {
  it('are sent and answered raw in one room only', async () => {
    for (const name of ['ipcMain', 'ipcRenderer']) {
      const code = `import { ${name} } from 'electron'; export const x = ${name};`;
      expect(await complaints('main/app/tried.ts', code)).toEqual(['no-restricted-imports']);
      expect(await complaints('main/preload/tried.ts', code)).toEqual(['no-restricted-imports']);
      expect(await complaints('main/ipc/tried.ts', code)).toEqual([]);
    }
  });
});
