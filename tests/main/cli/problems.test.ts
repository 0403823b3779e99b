import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';
import { runTestCli } from './runTestCli.ts';

const root = resolve(import.meta.dirname, '..', '..', '..');
const fixture = (name: string): string => join(root, 'tests', 'fixtures', `${name}.geojson`);
const sample = join(root, 'sample-course', 'ossel-down.geojson');
const one = ['--hole', '1', '--ball', '1', '--flag', 'A'];

/** A problem is one line: what, where, what to do; no stack, and nothing on stdout. */
function expectProblem(result: { code: number; out: string; err: string }, told: RegExp): void {
  expect(result.err).toMatch(told);
  expect(result.err).toMatch(/^swale [^\n]+\n$/);
  expect(result.err).not.toMatch(/\bat .*:\d+:\d+|Error:|fault in Swale/);
  expect(result.out).toBe('');
  expect(result.code).toBe(1);
}

/** Each broken file with words its message must hold: the place, and what is wrong there. */
const broken: readonly (readonly [name: string, told: RegExp])[] = [
  ['truncated', /truncated\.geojson/],
  ['not-json', /not-json\.geojson/],
  ['newer-version', /newer Swale.*Update/],
  ['self-crossing', /self-crossing\.geojson.*cross/],
  ['without-elevation', /Hole 1.*(height|slope)/],
  ['without-flag', /(flag|hole location)/],
  ['nan', /nan\.geojson/],
  ['infinite', /infinite\.geojson/],
  ['out-of-range', /(longitude|latitude)/],
  ['swapped', /(longitude|latitude)/i],
  ['projected', /(longitude|latitude)/],
  ['not-closed', /closed/],
  ['too-few-positions', /positions/],
  ['duplicate-id', /twice/],
  ['unknown-kind', /unknown-kind\.geojson/],
  ['unknown-member', /unknown-member\.geojson/],
  ['missing-member', /missing-member\.geojson/],
  ['dangling-hole', /dangling-hole\.geojson/],
  ['foreign-geojson', /not an atlas/],
];

describe('a file with something wrong', () => {
  it.each(broken)('%s: stops a plan with one clear line', async (name, told) => {
    expectProblem(await runTestCli(['plan', fixture(name), ...one]), told);
  });

  it.each(broken)('%s: leaves no trace of a playbook', async (name, told) => {
    const folder = temporaryFolder();
    expectProblem(await runTestCli(['playbook', fixture(name), '--out', join(folder, 'a', 'b')]), told);
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each(broken)('%s: fails its check', async (name) => {
    const { code, err } = await runTestCli(['check', fixture(name)]);
    expect(code).toBe(1);
    expect(err).toMatch(/^swale check: [^\n]+\n$/);
  });

  it('is told from a missing one, a folder and one that is not text', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'picture'), Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
    expectProblem(await runTestCli(['plan', join(folder, 'none'), ...one]), /no such file/);
    expectProblem(await runTestCli(['plan', folder, ...one]), /this is a folder/);
    expectProblem(await runTestCli(['plan', join(folder, 'picture'), ...one]), /not UTF-8 text/);
  });
});

describe('a place that is not in the atlas', () => {
  it.each([
    [['--hole', '99', '--ball', '1', '--flag', 'A'], /no hole "99".*Choose one of: /],
    [['--hole', '2', '--ball', '99', '--flag', 'A'], /Hole 2: there is no ball "99".*Choose one of: 1, 2/],
    [['--hole', '2', '--ball', '1', '--flag', 'Z'], /Hole 2: there is no flag "Z".*Choose one of: A, B/],
  ])('%j', async (args, told) => {
    expectProblem(await runTestCli(['plan', sample, ...args]), told);
  });
});

describe('wrong usage', () => {
  it.each([
    [['plan', sample, '--hole', '2', '--ball', '1'], '--flag is missing'],
    [['plan', ...one], 'FILE is missing'],
    [['plan', sample, 'second', ...one], '"second" is one argument too many'],
    [['plan', sample, ...one, '--bogus'], "Unknown option '--bogus'"],
    [['plan', sample, ...one, '--shots', '0'], '--shots is "0": give a whole number from 1'],
    [['plan', sample, ...one, '--seed', 'x'], '--seed is "x"'],
    [['plan', sample, ...one, '--units', 'miles'], '--units is "miles": give yards or metres'],
    [['playbook', sample], '--out is missing'],
    [['simulate', 'extra'], 'one argument too many'],
    [['fly'], '"fly" is not a command'],
  ])('%j', async (args, told) => {
    const { code, out, err } = await runTestCli(args);
    expect(err).toContain(told);
    expect(err).toMatch(/^swale [^\n]+\n$/);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('without a command prints the help, on stderr', async () => {
    const { code, out, err } = await runTestCli([]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('Usage: swale COMMAND');
  });
});

describe('help', () => {
  it('names every command, and each explains itself', async () => {
    const { code, out } = await runTestCli(['--help']);
    expect(code).toBe(0);
    for (const name of ['plan', 'playbook', 'check', 'simulate']) {
      expect(out).toContain(`  ${name}`);
      for (const args of [
        [name, '--help'],
        [name, '-h'],
        ['help', name],
      ]) {
        const one = await runTestCli(args);
        expect(one.code).toBe(0);
        expect(one.out).toContain(`Usage: swale ${name}`);
        expect(one.err).toBe('');
      }
    }
  });

  it('stays within the width of a page', async () => {
    for (const name of ['plan', 'playbook', 'check', 'simulate'])
      for (const line of (await runTestCli([name, '--help'])).out.split('\n'))
        expect(line.length, line).toBeLessThanOrEqual(120);
  });
});

describe('one shot that cannot be played', () => {
  it.each([
    ['', /nothing to read/],
    ['{', /not JSON/],
    ['[]', /request/],
    ['{}', /no shot.*Give exactly one of/],
    ['{"roll":{"speedMps":2},"launch":{"speedMps":2,"elevationDeg":10}}', /more than one shot/],
    ['{"roll":{"speedMps":1e999}}', /roll\.speedMps/],
    ['{"roll":{"speedMps":NaN}}', /not JSON/],
    ['{"roll":{"speedMps":"2"}}', /roll\.speedMps/],
    ['{"roll":{"speedMps":2},"firmness":2}', /firmness/],
    ['{"roll":{"speedMps":2},"colour":1}', /colour/],
    ['{"roll":{},"ground":{"slopePct":60},"solve":{"totalM":40}}', /./],
  ])('%s', async (stdin, told) => {
    expectProblem(await runTestCli(['simulate', '--json'], stdin), told);
  });
});

it('shows where a fault is only when asked', async () => {
  const quiet = await runTestCli(['plan', fixture('truncated'), ...one]);
  const loud = await runTestCli(['plan', fixture('truncated'), ...one], '', { SWALE_DEBUG: '1' });
  expect(quiet.err.split('\n')).toHaveLength(2);
  expect(loud.err).toMatch(/\n\s+at /);
  expect(loud.err.endsWith(quiet.err)).toBe(true);
});

it('leaves the files of others in the folder alone, and refuses a file in its place', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'notes.txt'), 'mine');
  writeFileSync(join(folder, 'taken'), 'mine');
  expectProblem(await runTestCli(['playbook', sample, '--hole', '99', '--out', folder]), /no hole/);
  expect(readdirSync(folder).sort()).toEqual(['notes.txt', 'taken']);
  expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('mine');
});
