import { describe, expect, it } from 'vitest';
import { likelyMisses } from '../../../shared/planner/likelyMisses.ts';
import type { Plan, PlanOption } from '../../../shared/planner/plan.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { complexDocument, type ComplexSpec, fullBag } from './complex.ts';

function planOf(spec: ComplexSpec): Plan {
  const scene = buildScene(complexDocument(spec), 'h1');
  return planBall(scene, {
    ballId: scene.balls[0]?.record.id ?? '',
    flagId: 'A',
    shotsPerOption: 120,
    seed: 5,
  });
}

function chosen(plan: Plan): PlanOption {
  const option = plan.options.find(({ id }) => id === plan.chosenId);
  if (option === undefined) throw new Error('the chosen option is not in the plan');
  return option;
}

const said = (option: PlanOption): string =>
  option.reasons.map((reason) => reasonText(reason, { system: 'yards', paceM: 0.9144 })).join(' ');

describe('ground at the edge of what there is', () => {
  it('aims a putt on dead level ground at the hole', () => {
    const plan = planOf({
      bunker: false,
      flags: [{ id: 'A', at: [0, 4] }],
      balls: [{ id: 'b', at: [0, -6] }],
    });
    expect(chosen(plan).technique).toBe('putt');
    expect(Math.abs(chosen(plan).aimRightM)).toBeLessThan(0.05);
    expect(chosen(plan).strokes).toBeGreaterThan(1.7);
  });

  it('plays off a 20 % bank, up, down and along it, and reads no cliff where the ball lands', () => {
    const strokes = ([-0.2, 0.2] as const).map((slope) => {
      const plan = planOf({
        heightM: (_east, north) => slope * Math.min(0, north + 12),
        balls: [{ id: 'b', at: [-4, -18] }],
      });
      expect(Math.abs(plan.lieAlongDeg)).toBeGreaterThan(3);
      for (const option of plan.options) {
        expect(said(option)).not.toMatch(/(rising|falling) [3-9]\d/);
        expect(said(option)).not.toMatch(/NaN|undefined| 0 yd/);
      }
      return chosen(plan).strokes;
    });
    for (const value of strokes) expect(value).toBeGreaterThan(1.8);
    for (const value of strokes) expect(value).toBeLessThan(5);
    const across = planOf({
      heightM: (east) => 0.2 * Math.max(0, east - 14),
      balls: [{ id: 'b', at: [20, 8] }],
    });
    expect(Math.abs(across.lieAcrossDeg) + Math.abs(across.lieAlongDeg)).toBeGreaterThan(5);
    expect(Number.isFinite(chosen(across).strokes)).toBe(true);
  });

  it('says that nothing holds on ground that falls 20 % everywhere, and calls no ball lost in a penalty area', () => {
    const heightM = (_east: number, north: number): number => -0.2 * north;
    const plan = planOf({ heightM, bunker: false, balls: [{ id: 'b', at: [3, -6] }] });
    for (const { chances } of plan.options) expect([chances.penalty, chances.outOfBounds]).toEqual([0, 0]);
    expect(said(chosen(plan))).toMatch(/Nothing holds it at the flag: as meant it runs/);
    const { conditions, ground, player } = buildScene(
      complexDocument({ heightM, bunker: false, balls: [] }),
      'h1',
    );
    const line = { target: { eastM: 3, northM: 4 }, bearingDeg: 0, distanceM: 130 };
    const misses = likelyMisses({ conditions, ground, player }, line, { shots: 60, spots: 2, seed: 1 });
    expect(misses.lost).toBe(0);
  });

  it('gets a ball out of a buried lie in heavy rough, or says what it leaves out', () => {
    const plan = planOf({
      surround: 'heavyRough',
      balls: [{ id: 'b', at: [-20, 2], lie: 'sittingDown' }],
    });
    expect(plan.options.length).toBeGreaterThan(0);
    expect(plan.leftOut.some(({ id }) => id === 'putt')).toBe(true);
    expect(plan.options.some(({ id }) => id === plan.safeId)).toBe(true);
  });

  it('plans to a flag on the edge of the green and from the lip of the hole, without a putter too', () => {
    const edge = planOf({ flags: [{ id: 'A', at: [0, 12.8] }], balls: [{ id: 'b', at: [0, 20] }] });
    expect(chosen(edge).strokes).toBeLessThan(4);
    const lip = planOf({
      balls: [{ id: 'b', at: [3.03, 4] }],
      player: { bag: fullBag.filter(({ kind }) => kind !== 'putter') },
    });
    expect(chosen(lip).strokes).toBeLessThan(1.2);
  });
});
