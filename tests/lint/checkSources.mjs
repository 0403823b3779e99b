import { resolve } from 'node:path';
import { ESLint } from 'eslint';
import ts from 'typescript';

/**
 * The compiler and ESLint over the same programs. Both ask the same questions about the same expressions: apart, each makes a
 * program of its own and works out the answers for itself. What is in shared/ is looked at once, where neither browser nor
 * Node is known.
 */
const root = resolve(import.meta.dirname, '..', '..');

/** @param {string} path */
function programOf(path) {
  const config = ts.getParsedCommandLineOfConfigFile(resolve(root, path), undefined, {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: (diagnostic) => {
      throw new Error(ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
    },
  });
  if (config === undefined) throw new Error(`${path} cannot be read.`);
  return ts.createProgram({
    rootNames: config.fileNames,
    options: config.options,
    configFileParsingDiagnostics: config.errors,
  });
}

const shared = programOf('shared/tsconfig.json');
const all = programOf('tsconfig.json');
const seen = new Set(shared.getRootFileNames());
const diagnostics = ts.sortAndDeduplicateDiagnostics([
  ...ts.getPreEmitDiagnostics(shared),
  ...all
    .getSourceFiles()
    .filter(({ fileName }) => !seen.has(fileName))
    .flatMap((file) => ts.getPreEmitDiagnostics(all, file)),
]);

const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: resolve(root, 'tests', 'eslint.config.mjs'),
  overrideConfig: {
    files: ['**/*.{ts,tsx}'],
    // A file is read from the first program that has it.
    languageOptions: { parserOptions: { project: null, programs: [shared, all] } },
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
