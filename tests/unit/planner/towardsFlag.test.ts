import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAtlasFile } from '../../../shared/formats/atlasFile.ts';
import type { Plan, PlanOption } from '../../../shared/planner/plan.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { complexDocument, type ComplexSpec, fullBag } from './complex.ts';

const planOf = (spec: ComplexSpec): Plan =>
  planBall(buildScene(complexDocument(spec), 'h1'), {
    ballId: spec.balls[0]?.id ?? '',
    flagId: 'A',
    shotsPerOption: 60,
    seed: 5,
  });
const said = (reasons: PlanOption['reasons']): string =>
  reasons.map((reason) => reasonText(reason, { system: 'yards', paceM: 0.9144 })).join(' ');

describe('what is worth listing', () => {
  it('putts no farther through grass than a putter strokes, and says why not', () => {
    const plan = planOf({ surround: 'lightRough', balls: [{ id: 'b', at: [0, -60] }] });
    expect(plan.options.map(({ technique }) => technique)).not.toContain('putt');
    const out = plan.leftOut.filter(({ reason }) => reason.values['technique'] === 'putt');
    expect(out.map(({ reason }) => reasonText(reason, { system: 'yards', paceM: 0.9144 }))).toEqual([
      'No putt reaches the flag from here.',
    ]);
    expect(() => planOf({ balls: [{ id: 'b', at: [0, -120] }] })).toThrow(
      /ball b: flag A is 124 m \(136 yd\) away.*within 100 m/,
    );
  });

  it('says of a putter alone in deep grass that the lie is not for it and that it does not get there', () => {
    const plan = planOf({
      surround: 'heavyRough',
      balls: [{ id: 'b', at: [0, -30] }],
      player: { bag: fullBag.filter(({ kind }) => kind === 'putter') },
    });
    const putt = plan.options.find(({ playAway }) => !playAway);
    expect(said(putt?.reasons ?? [])).toMatch(/suits this lie.*does not get to the flag/);
    expect(said(putt?.reasons ?? [])).not.toMatch(/[Mm]eant to stop/);
    expect(plan.leftOut.some(({ id }) => id === 'putt')).toBe(false);
  });

  it('lists no shot that has to be aimed somewhere else', () => {
    // Over sand: what runs along the ground could only go round it.
    const text = readFileSync(new URL('../../../sample-course/ossel-down.geojson', import.meta.url), 'utf8');
    const scene = buildScene(readAtlasFile(text, 'ossel-down.geojson'), 'h2');
    const idOf = (label: string): string =>
      [...scene.balls, ...scene.flags].find(({ record }) => record.label === label)?.record.id ?? '';
    const plan = planBall(scene, { ballId: idOf('3'), flagId: idOf('B'), shotsPerOption: 60, seed: 1 });
    for (const { aimRightM, leave } of plan.options)
      expect(Math.abs(aimRightM) < 0.45 * plan.distanceM || leave.medianM < 0.5 * plan.distanceM).toBe(true);
    const away = plan.leftOut.filter(({ reason }) => reason.kind === 'aimedAway').map(({ id }) => id);
    expect(away.length).toBeGreaterThan(0);
    expect(plan.options.filter(({ id }) => away.includes(id))).toEqual([]);
  });
});
