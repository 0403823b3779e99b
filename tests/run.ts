import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { constants, setPriority, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findChromium } from '../main/cli/findChromium.ts';

/**
 * `npm test`: everything that must hold, cheapest first. A step that fails does not hide the ones after it, unless they
 * need it. The last line gives the number of tests passed and failed; a step that is not made of tests counts as one
 * failed where it fails.
 */
const root = resolve(import.meta.dirname, '..');
const results = mkdtempSync(join(tmpdir(), 'swale-results-'));
/** What makes and drops much, as they all do, is held up less by a nursery larger than usual. */
const node = [process.execPath, '--max-semi-space-size=64'];
const tool = (name: string, ...path: readonly string[]): readonly string[] => [
  ...node,
  join(root, 'node_modules', name, ...path),
];

interface Outcome {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}
const outcomes: Outcome[] = [];

try {
  // Installing waits for the network most of the time.
  const found = installed();
  const [chromium, built] = await Promise.all([found, withoutChecker(found), checkSources()]);
  if (built && chromium) await vitest('Tests of the built program', 'vitest.e2e.config.ts');
} finally {
  rmSync(results, { recursive: true, force: true });
}

const sum = (count: keyof Outcome): number => outcomes.reduce((total, outcome) => total + outcome[count], 0);
if (sum('skipped') > 0) console.log(`\n${sum('skipped')} skipped, for the reasons given above.`);
console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
process.exitCode = sum('failed') === 0 ? 0 : 1;

/**
 * The longest of all that uses one core: all but the tests of the built program goes on beside it, and gives way to it, so
 * that in the end no core waits for it alone.
 */
async function checkSources(): Promise<void> {
  await step('Types and lint', [...node, join(root, 'tests', 'lint', 'checkSources.mjs')]);
}

/** What is cheap first, and the build for the tests to come. True where there is one. */
async function withoutChecker(found: Promise<boolean>): Promise<boolean> {
  const prettier = tool('prettier', 'bin', 'prettier.cjs');
  await step('Format', [...prettier, '--check', '--log-level', 'warn', '.'], true);
  const build = tool('electron-vite', 'bin', 'electron-vite.js');
  const built = await step('Build', [...build, 'build', '--logLevel', 'warn'], true);
  await found;
  await vitest('Unit, published, property and program tests', 'vitest.config.ts', true);
  return built;
}

/** Runs a program to its end and shows what it said under a heading of its own. */
async function step(title: string, command: readonly string[], givesWay = false): Promise<boolean> {
  const { code, output, seconds } = await run(command, givesWay);
  heading(title, code === 0, seconds);
  if (output !== '') process.stdout.write(output);
  if (code !== 0) outcomes.push({ passed: 0, failed: 1, skipped: 0 });
  return code === 0;
}

async function vitest(title: string, config: string, givesWay = false): Promise<void> {
  const report = join(results, `${config}.json`);
  const options = [
    '--config',
    join('tests', config),
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ];
  const { code, output, seconds } = await run([...tool('vitest', 'vitest.mjs'), 'run', ...options], givesWay);
  const outcome = counted(report, code);
  heading(title, outcome.failed === 0, seconds);
  process.stdout.write(output);
  outcomes.push(outcome);
}

/** The counts of a test run; a run that fails without a failed test (a file that does not load) counts as one. */
function counted(report: string, code: number): Outcome {
  let counts: Readonly<Record<string, unknown>>;
  try {
    counts = JSON.parse(readFileSync(report, 'utf8')) as Readonly<Record<string, unknown>>;
  } catch {
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const number = (key: string): number => Number(counts[key] ?? 0);
  const failed = number('numFailedTests');
  return {
    passed: number('numPassedTests'),
    failed: failed === 0 && code !== 0 ? 1 : failed,
    skipped: number('numPendingTests') + number('numTodoTests'),
  };
}

/**
 * Makes sure of what the tests hold us against, installing Debian's where that is allowed: a browser and PDF tools, and GDAL,
 * whose tests say so where it is missing. True with a browser.
 */
async function installed(): Promise<boolean> {
  const lacks = (program: string, argument: string): boolean =>
    spawnSync(program, [argument], { stdio: 'ignore' }).error !== undefined;
  const missing = [
    ...(lacks('gdalinfo', '--version') ? ['gdal-bin'] : []),
    ...(lacks('chromium-headless-shell', '--version')
      ? ['chromium-headless-shell', 'fonts-dejavu-core']
      : []),
    ...(lacks('pdfinfo', '-v') ? ['poppler-utils'] : []),
  ];
  if (missing.length > 0 && process.getuid?.() === 0 && isDebian()) {
    const install = ['install', '-y', '-qq', '--no-install-recommends', ...missing];
    await run(['apt-get', 'update', '-qq']);
    const { code, output } = await run(['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', ...install]);
    console.log(`\nInstalled from Debian: ${missing.join(', ')}`);
    if (code !== 0) console.log(output);
  }
  const found = findChromium(process.env) !== null;
  if (!found) {
    heading('Tests of the built program', false, 0);
    console.log(
      'No Chromium found: install it (Debian: apt-get install chromium poppler-utils), or set CHROME_PATH to Chrome, Chromium or Edge.',
    );
    outcomes.push({ passed: 0, failed: 1, skipped: 0 });
  }
  return found;
}

function isDebian(): boolean {
  try {
    return /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

function heading(title: string, good: boolean, seconds: number): void {
  console.log(`\n== ${title}: ${good ? 'ok' : 'FAILED'} (${seconds.toFixed(1)} s)`);
}

function run(
  command: readonly string[],
  givesWay = false,
): Promise<{ code: number; output: string; seconds: number }> {
  const [program = '', ...args] = command;
  const started = performance.now();
  return new Promise((done) => {
    // What is told through a pipe should stay readable in a log.
    const env = process.stdout.isTTY ? process.env : { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' };
    const child = spawn(program, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    if (givesWay && child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (part: string) => (output += part));
    child.on('close', (code) =>
      done({ code: code ?? 1, output, seconds: (performance.now() - started) / 1000 }),
    );
  });
}
