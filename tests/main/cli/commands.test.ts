import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeFolder } from '../../../main/cli/writeFolder.ts';
import { findHole, findBall } from '../../../main/cli/findRecords.ts';
import { readAtlas } from '../../../main/cli/readInput.ts';
import { answer } from '../../../shared/planner/answer.ts';
import type { Plan } from '../../../shared/planner/plan.ts';
import { USUAL_SEED } from '../../../shared/protocol/planning.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';
import { runTestCli } from './runTestCli.ts';

const root = resolve(import.meta.dirname, '..', '..', '..');
const sample = join(root, 'sample-course', 'ossel-down.geojson');

describe('plan', () => {
  const shots = 40;
  const asked = ['plan', sample, '--hole', '2', '--ball', '1', '--flag', 'A', '--shots', String(shots)];

  it('gives the plan of the engine, every digit of it, and the reasons in words', async () => {
    const { code, out, err } = await runTestCli([...asked, '--json']);
    expect([code, err]).toEqual([0, '']);
    const printed = JSON.parse(out) as Plan & {
      readonly options: readonly { readonly why: readonly string[] }[];
    };
    const document = await readAtlas(sample);
    const hole = findHole(document, '2');
    const plan = answer({
      document,
      holeId: hole.id,
      ballId: findBall(document, hole, '1').id,
      flagId: printed.flagId,
      shotsPerOption: shots,
      seed: USUAL_SEED,
    });
    expect(printed.key).toBe(plan.key);
    expect(printed.options.map(({ strokes, aimBearingDeg }) => [strokes, aimBearingDeg])).toEqual(
      plan.options.map(({ strokes, aimBearingDeg }) => [strokes, aimBearingDeg]),
    );
    expect(printed.options[0]?.finishesM).toEqual(Array.from(plan.options[0]?.finishesM ?? []));
    for (const { why } of printed.options) expect(why.length).toBeGreaterThanOrEqual(2);
  });

  it('takes ids as well as labels, and either letter case', async () => {
    const byLabel = await runTestCli([...asked, '--json']);
    const { ballId, flagId } = JSON.parse(byLabel.out) as Plan;
    const document = await readAtlas(sample);
    const { id } = findHole(document, '2');
    const byId = await runTestCli([
      'plan',
      sample,
      '--hole',
      id,
      '--ball',
      ballId,
      '--flag',
      flagId,
      '--shots',
      String(shots),
      '--json',
    ]);
    expect(byId.out).toBe(byLabel.out);
    const small = await runTestCli([...asked.map((arg) => (arg === 'A' ? 'a' : arg)), '--json']);
    expect(small.out).toBe(byLabel.out);
  });

  it('prints a ledger with the advice marked, and why', async () => {
    const { out } = await runTestCli(asked);
    const lines = out.split('\n');
    expect(lines[0]).toMatch(/^Hole 2, ball 1 .* to flag A: /);
    expect(lines.filter((line) => line.startsWith('>'))).toHaveLength(1);
    expect(lines.filter((line) => line.endsWith('best'))).toHaveLength(1);
    const name = /^>s? {2,}(.+?) {2,}/.exec(lines.find((line) => line.startsWith('>')) ?? '')?.[1] ?? '?';
    const why = lines.indexOf(`${name}:`);
    expect(why).toBeGreaterThan(0);
    expect(lines[why + 1]).toMatch(/^ {2}\S.*\.$/);
    expect(lines[why + 2]).toMatch(/^ {2}\S.*\.$/);
    expect((await runTestCli([...asked, '--units', 'metres'])).out).toContain('carry m');
  });
});

describe('check', () => {
  it('passes both sample files', async () => {
    for (const name of ['ossel-down', 'ossel-practice']) {
      const { code, out, err } = await runTestCli(['check', join(root, 'sample-course', `${name}.geojson`)]);
      expect([code, err]).toEqual([0, '']);
      expect(out).toMatch(new RegExp(`\\n?${name}\\.geojson: no errors, .* \\d+ records\\n$`));
    }
  });

  it('lists what is wrong with place and remedy, as text and as JSON', async () => {
    const path = join(root, 'tests', 'fixtures', 'self-crossing.geojson');
    const text = await runTestCli(['check', path]);
    expect(text.code).toBe(1);
    expect(text.out).toMatch(/^error +\S.*: .*cross.*\. .*\.$/m);
    expect(text.err).toMatch(/^swale check: self-crossing\.geojson: the atlas has 1 error\./);
    const json = await runTestCli(['check', path, '--json']);
    const { findings } = JSON.parse(json.out) as { readonly findings: readonly Record<string, unknown>[] };
    const crossing = findings.find(({ severity }) => severity === 'error');
    for (const key of ['id', 'check', 'place', 'what', 'remedy'])
      expect(crossing?.[key]).toBeTypeOf('string');
    expect(crossing?.['recordIds']).not.toEqual([]);
  });
});

describe('simulate', () => {
  const full = {
    ground: { slopePct: 2, downhillBearingDeg: 90, cover: 'green' },
    stimpFt: 10,
    firmness: 0.5,
    moisture: 'dry',
    windMps: 0,
    windFromDeg: 0,
    strike: {
      loftDeg: 46,
      leanDeg: 5,
      attackDeg: -4,
      faceOpenDeg: 0,
      lieSlopeDeg: 0,
      clubheadMps: 9,
      bearingDeg: 0,
      lie: 'clean',
    },
  };

  it('keeps its keys', async () => {
    const { code, out } = await runTestCli(['simulate', '--json'], JSON.stringify(full));
    expect(code).toBe(0);
    const reply = JSON.parse(out) as Readonly<Record<string, unknown>>;
    expect(Object.keys(reply)).toEqual([
      ...['carryM', 'landing', 'apexM', 'bounces', 'runM', 'rest', 'totalM', 'holed', 'outcome', 'launch'],
    ]);
    expect(Object.keys(reply['landing'] as object)).toEqual(['eastM', 'northM']);
    expect(Object.keys(reply['rest'] as object)).toEqual(['eastM', 'northM']);
    expect(Object.keys(reply['launch'] as object)).toEqual(['speedMps', 'elevationDeg', 'backspinRpm']);
    // It is struck north, and the ground falls to the east.
    const { eastM, northM } = reply['rest'] as { eastM: number; northM: number };
    expect(eastM).toBeGreaterThan(0.05);
    expect(northM).toBeGreaterThan(3);
  });

  it('solves for a distance, and holes out where it should', async () => {
    const solved = await runTestCli(
      ['simulate', '--json'],
      JSON.stringify({ roll: { bearingDeg: 90 }, solve: { totalM: 12 } }),
    );
    const { totalM, speedMps } = JSON.parse(solved.out) as { totalM: number; speedMps: number };
    expect(totalM).toBeCloseTo(12, 6);
    const again = await runTestCli(
      ['simulate', '--json'],
      JSON.stringify({ roll: { bearingDeg: 90, speedMps }, hole: { eastM: 11.8, northM: 0 } }),
    );
    expect(JSON.parse(again.out)).toMatchObject({ holed: true, outcome: 'holed' });
  });

  it('says it in words without --json', async () => {
    const { out } = await runTestCli(['simulate'], JSON.stringify(full));
    for (const word of ['launch', 'carry', 'bounces', 'run', 'end', 'total'])
      expect(out).toMatch(new RegExp(`^${word} `, 'm'));
  });
});

describe('a folder written whole or not at all', () => {
  it('moves the finished files in beside those already there', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    await writeFolder(folder, (draft) => {
      writeFileSync(join(draft, 'page.html'), 'new');
      expect(readdirSync(folder)).toEqual(['notes.txt']);
      return Promise.resolve();
    });
    expect(readdirSync(folder).sort()).toEqual(['notes.txt', 'page.html']);
  });

  it('leaves nothing behind where the filling fails', async () => {
    const above = temporaryFolder();
    const fails = writeFolder(join(above, 'a', 'b'), (draft) => {
      writeFileSync(join(draft, 'page.html'), 'half');
      return Promise.reject(new Error('stopped'));
    });
    await expect(fails).rejects.toThrow('stopped');
    expect(readdirSync(above)).toEqual([]);
  });

  it('is refused where a file has its name', async () => {
    const above = temporaryFolder();
    writeFileSync(join(above, 'taken'), 'mine');
    for (const path of ['taken', join('taken', 'deeper')])
      await expect(writeFolder(join(above, path), () => Promise.resolve())).rejects.toMatchObject({
        code: 'not-a-folder',
      });
    expect(readFileSync(join(above, 'taken'), 'utf8')).toBe('mine');
  });
});
