import { resolve } from 'node:path';
import js from '@eslint/js';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import importRule from './lint/importRule.mjs';

const root = resolve(import.meta.dirname, '..');

/** Names that exist in a browser or in Node but not in the language: shared/ runs in both and in workers. */
const hostGlobals = [
  ...['window', 'document', 'navigator', 'location', 'localStorage', 'sessionStorage', 'indexedDB', 'self'],
  ...['process', 'Buffer', 'require', 'module', 'global', '__dirname', '__filename'],
  ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'requestAnimationFrame', 'performance'],
  ...['fetch', 'XMLHttpRequest', 'WebSocket', 'Worker', 'console', 'crypto', 'alert'],
];

/** Correctly rounded in every engine, or exact: all that the engine's layers may take from Math. */
const exactMath = [
  'sqrt',
  'abs',
  'min',
  'max',
  'floor',
  'ceil',
  'round',
  'trunc',
  'sign',
  'imul',
  'clz32',
  'fround',
];
const looseMath = Object.entries(Object.getOwnPropertyDescriptors(Math))
  .filter(([name, { value }]) => typeof value === 'function' && !exactMath.includes(name))
  .map(([name]) => name);

const purity = [
  { object: 'Math', property: 'random', message: 'Take a seeded generator as an argument (shared/random).' },
  { object: 'Date', property: 'now', message: 'Take the time as an argument.' },
];
const dateFromClock = {
  selector: "NewExpression[callee.name='Date'][arguments.length=0], CallExpression[callee.name='Date']",
  message: 'Take the time as an argument.',
};

export default tseslint.config(
  { ignores: ['node_modules/**', 'out/**', 'dist/**', 'coverage/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.{ts,tsx,mjs}'],
    extends: [js.configs.recommended],
    plugins: { swale: { rules: { layers: importRule } } },
    rules: { 'swale/layers': ['error', { root }], eqeqeq: 'error' },
  },
  { files: ['**/*.mjs'], rules: { 'no-undef': 'off' } }, // the compiler checks names
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { project: 'tsconfig.json', tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      // { left, ...rest } is how a member is left out.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      // An index signature is read as what it is: `noPropertyAccessFromIndexSignature` asks for the brackets.
      '@typescript-eslint/dot-notation': 'off',
      // A typed array read within its bounds is a number: `as number` says so, and `!` is not used here.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      // There are no enums here and hardly a class, and these two ask for the types of every assignment.
      '@typescript-eslint/no-unsafe-enum-assignment': 'off',
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Loops over flat arrays need the index for more than one of them.
      '@typescript-eslint/prefer-for-of': 'off',
    },
  },
  {
    // Where components and hooks are; the rules compile every file that they are shown.
    files: ['renderer/**/*.tsx', 'renderer/**/use*.ts'],
    plugins: { 'react-hooks': reactHooks },
    rules: reactHooks.configs['recommended-latest'].rules,
  },
  {
    files: ['shared/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...hostGlobals.map((name) => ({ name, message: 'shared/ knows neither browser nor Node.' })),
      ],
      'no-restricted-properties': ['error', ...purity],
      'no-restricted-syntax': ['error', dateFromClock],
    },
  },
  {
    files: ['shared/{terrain,ball,player,planner}/**/*.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        ...purity,
        ...looseMath
          .filter((property) => property !== 'random')
          .map((property) => ({
            object: 'Math',
            property,
            message: 'It may differ in the last bit between engines: use shared/numeric/elementary.ts.',
          })),
      ],
      'no-restricted-syntax': [
        'error',
        dateFromClock,
        {
          selector: "BinaryExpression[operator='**'], AssignmentExpression[operator='**=']",
          message: 'It may differ in the last bit between engines: multiply, or use pow of shared/numeric.',
        },
      ],
    },
  },
  {
    files: ['main/**/*.ts'],
    ignores: ['main/ipc/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: 'electron',
              importNames: ['ipcMain', 'ipcRenderer'],
              message: 'Messages between processes are typed: use main/ipc.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['tests/**/*.{ts,tsx}'],
    rules: {
      // expect(spy.method) passes methods without calling them.
      '@typescript-eslint/unbound-method': 'off',
    },
  },
);
