import { describe, expect, it } from 'vitest';
import { planBall } from '../../../shared/planner/planBall.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { type TriedShot, type TryRequest, tryShotSteps } from '../../../shared/planner/tryShot.ts';
import { complexDocument } from './complex.ts';

const scene = buildScene(
  complexDocument({ heightM: (_, north) => 0.01 * north, balls: [{ id: 'b', at: [-4, -18] }] }),
  'h1',
);
const plan = planBall(scene, { ballId: 'b', flagId: 'A', shotsPerOption: 128, seed: 3 });
const chip = plan.options.find(({ technique, playAway }) => technique === 'chip' && !playAway);
if (chip === undefined) throw new Error('a chip belongs to this plan');
const request: TryRequest = {
  ballId: 'b',
  flagId: 'A',
  shots: 128,
  seed: 3,
  technique: chip.technique,
  clubId: chip.clubId,
  landing: null,
  sizeFactor: 1,
  aimShiftM: 0,
  advisedId: plan.chosenId,
};

function tried(changes: Partial<TryRequest>): TriedShot {
  const steps = tryShotSteps(scene, { ...request, ...changes });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

describe('a shot tried', () => {
  it('with nothing changed is the option of the plan', () => {
    const best = plan.options[0];
    if (best === undefined) throw new Error('a plan has options');
    const { tried: same } = tried({ technique: best.technique, clubId: best.clubId });
    expect(same.strokes).toBe(best.strokes);
    expect(same.clubheadMps).toBe(best.clubheadMps);
    // One far behind is aimed with more care when it is tried than where it only fills the table.
    expect(tried({}).tried.strokes).toBeCloseTo(chip.strokes, 1);
  });

  it('costs nothing over the recommendation when it is the recommendation', () => {
    const [technique, clubId] = plan.chosenId.split(':');
    const option = plan.options.find(({ id }) => id === plan.chosenId);
    expect([option?.technique, option?.clubId]).toEqual([technique, clubId]);
    const outcome = tried({ technique: option?.technique ?? 'chip', clubId: option?.clubId ?? '' });
    expect(outcome.costStrokes).toBe(0);
    expect(outcome.standardErrorStrokes).toBe(0);
  });

  it('compares with the same recommendation however often it is asked, and with another on another day', () => {
    const advised = (changes: Partial<TryRequest>) => tried(changes).advised;
    const first = advised({ sizeFactor: 1.1 });
    expect(first?.strokes).toBe(plan.options.find(({ id }) => id === plan.chosenId)?.strokes);
    expect(advised({ sizeFactor: 0.9 })).toEqual(first);
    const fast = advised({ conditions: { ...scene.conditions, stimpFt: 13 } });
    expect(fast?.clubheadMps).not.toBe(first?.clubheadMps);
    expect(advised({ level: { kind: 'tour' } })?.strokes).toBeLessThan(first?.strokes ?? NaN);
    expect(advised({})).toEqual(first);
  });

  it('lands where it is asked to', () => {
    const from = chip.landing;
    if (from === null) throw new Error('a chip lands');
    const landing = { eastM: from.eastM, northM: from.northM + 1.5 };
    const { tried: moved } = tried({ landing });
    expect(moved.landing?.eastM).toBeCloseTo(landing.eastM, 0);
    expect(Math.abs((moved.landing?.northM ?? NaN) - landing.northM)).toBeLessThan(0.25);
  });

  it('goes further with a bigger swing, and costs more when it is far too big', () => {
    const { tried: big, costStrokes } = tried({ sizeFactor: 1.4 });
    expect(big.carryM).toBeGreaterThan(chip.carryM * 1.3);
    expect(costStrokes).toBeGreaterThan(0.1);
  });

  it('takes the level and the day it is told', () => {
    const tour = tried({ level: { kind: 'tour' } }).tried;
    const beginner = tried({ level: { kind: 'beginner' } }).tried;
    expect(tour.strokes).toBeLessThan(beginner.strokes - 0.3);
    expect(tried({ conditions: { ...scene.conditions, stimpFt: 13 } }).tried.clubheadMps).not.toBe(
      chip.clubheadMps,
    );
  });

  it('strikes a wetter lie otherwise, though the ground it comes to is as dry as before', () => {
    const wet = tried({ moisture: 'wet' }).tried;
    expect(wet.aimBearingDeg).not.toBe(chip.aimBearingDeg);
    expect(wet.clubheadMps).not.toBe(chip.clubheadMps);
    const rainy = tried({ conditions: { ...scene.conditions, moisture: 'wet' } }).tried;
    expect(wet.strokes).not.toBe(rainy.strokes);
  });

  it('refuses a club that is not in the bag', () => {
    expect(() => tried({ clubId: 'gone' })).toThrow(/is gone/);
  });
});
