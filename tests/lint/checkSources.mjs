import { resolve } from 'node:path';
import { ESLint } from 'eslint';
import ts from 'typescript';

/**
 * The compiler and ESLint over one program. Both ask the same questions about the same expressions: apart, each makes a
 * program of its own and works out the answers for itself.
 */
const root = resolve(import.meta.dirname, '..', '..');
const config = ts.getParsedCommandLineOfConfigFile(resolve(root, 'tsconfig.json'), undefined, {
  ...ts.sys,
  onUnRecoverableConfigFileDiagnostic: (diagnostic) => {
    throw new Error(ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
  },
});
if (config === undefined) throw new Error('tsconfig.json cannot be read.');
const program = ts.createProgram({
  rootNames: config.fileNames,
  options: config.options,
  configFileParsingDiagnostics: config.errors,
});
const diagnostics = ts.sortAndDeduplicateDiagnostics(ts.getPreEmitDiagnostics(program));

const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: resolve(root, 'tests', 'eslint.config.mjs'),
  overrideConfig: {
    files: ['**/*.{ts,tsx}'],
    languageOptions: { parserOptions: { project: null, programs: [program] } },
  },
});
const results = await eslint.lintFiles(['.']);
const formatter = await eslint.loadFormatter('stylish');

process.stdout.write(
  ts.formatDiagnostics(diagnostics, {
    getCanonicalFileName: (name) => name,
    getCurrentDirectory: () => root,
    getNewLine: () => '\n',
  }),
);
process.stdout.write(await formatter.format(results));
const clean = results.every(({ errorCount, warningCount }) => errorCount + warningCount === 0);
process.exitCode = diagnostics.length === 0 && clean ? 0 : 1;
