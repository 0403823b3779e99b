import { expect, it } from 'vitest';
import { planAll } from '../../../main/cli/planPool.ts';
import { complexDocument } from '../../unit/planner/complex.ts';

it('plans the other balls where the marks of the player leave one without a shot', async () => {
  const document = complexDocument({
    player: { repertoire: { explosion: 'notMine' } },
    balls: [
      { id: 'buried in sand', at: [16, -6], lie: 'buried' },
      { id: 'on the green', at: [2, 2] },
    ],
  });
  const task = (ballIds: readonly string[]) => ({ holeId: 'h1', flagId: 'A', ballIds });
  const run = { document, shotsPerOption: 20, seed: 1 };
  const told: string[] = [];
  let counted = 0;
  const plans = await planAll(
    run,
    [task(['buried in sand', 'on the green'])],
    () => (counted += 1),
    ({ message }) => told.push(message),
  );
  expect(plans.map(({ ballId }) => ballId)).toEqual(['on the green']);
  expect(counted).toBe(2);
  expect(told).toEqual([expect.stringMatching(/^Hole 1, ball buried in sand: .*explosion.*Player/)]);
});
