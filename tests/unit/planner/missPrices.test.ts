import { expect, it } from 'vitest';
import { flagToolsSteps } from '../../../shared/planner/flagTools.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';
import { complexDocument } from './complex.ts';

const FAIRWAY = coverCode('fairway');

it('prices a miss without jumps near the flag, whatever was asked before', () => {
  // Where the slope away from the green makes a pace matter.
  const document = complexDocument({
    heightM: (east, north) => 0.02 * north - 0.004 * Math.max(0, east - 8) * Math.max(0, east - 8),
    bunker: false,
    flags: [{ id: 'A', at: [9, 0] }],
    balls: [],
  });
  const flag = { eastM: 9, northM: 0 };
  const pricesOf = (): ((i: number) => number) => {
    const steps = flagToolsSteps(buildScene(document, 'h1'), flag, 'coarse');
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const { misses } = step.value;
    // A walk of 12 m past the flag, 5 m east of it, a decimetre at a time.
    return (i) => misses.at(14.5, -6 + 0.1 * i, FAIRWAY);
  };
  const [forth, back] = [pricesOf(), pricesOf()];
  const prices = Array.from({ length: 121 }, (_, i) => forth(i));
  for (let i = 120; i >= 0; i -= 1) expect(back(i)).toBe(prices[i]);
  for (let i = 1; i < prices.length; i += 1)
    expect(Math.abs((prices[i] ?? 0) - (prices[i - 1] ?? 0))).toBeLessThan(0.03);
  expect(Math.max(...prices) - Math.min(...prices)).toBeGreaterThan(0.02);
});
