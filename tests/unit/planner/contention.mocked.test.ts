import { expect, it, vi } from 'vitest';
import { partsOfSample } from '../../../shared/planner/contention.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { complexDocument } from './complex.ts';

const SHOTS = 256;

it('stops an option out of contention early, with the same choice and safe way out, and says how sure it is', async () => {
  // Over sand, so that the options differ in trouble too.
  const scene = buildScene(
    complexDocument({
      heightM: (east, north) => 0.02 * north + 0.0004 * east * east,
      balls: [{ id: 'b', at: [21, -9] }],
    }),
    'h1',
  );
  // The same planner, but every option is shot to the end.
  vi.resetModules();
  vi.doMock('../../../shared/planner/contention.ts', () => ({
    partsOfSample,
    outOfContention: () => () => false,
  }));
  const { planBall: planToTheEnd } = await import('../../../shared/planner/planBall.ts');

  const ask = { ballId: 'b', flagId: 'A', seed: 3, shotsPerOption: SHOTS };
  const plan = planBall(scene, ask);
  const whole = planToTheEnd(scene, ask);
  expect([plan.chosenId, plan.safeId]).toEqual([whole.chosenId, whole.safeId]);
  expect(whole.options.every(({ finishCodes }) => finishCodes.length === SHOTS)).toBe(true);
  const stopped = plan.options.filter(({ finishCodes }) => finishCodes.length < SHOTS);
  expect(stopped.length).toBeGreaterThan(2);
  for (const option of plan.options) {
    const same = whole.options.find(({ id }) => id === option.id);
    if (same === undefined) throw new Error(`${option.id} is not in the whole plan`);
    if (!stopped.includes(option)) {
      expect(option.strokes).toBe(same.strokes);
      continue;
    }
    expect(partsOfSample.map(({ shots }): number => shots)).toContain(option.finishCodes.length);
    expect(option.finishesM).toEqual(same.finishesM.slice(0, option.finishesM.length));
    expect(option.standardErrorStrokes).toBeGreaterThan(same.standardErrorStrokes);
    expect(Math.abs(option.strokes - same.strokes)).toBeLessThan(3 * option.standardErrorStrokes);
  }
});
