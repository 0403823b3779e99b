import { expect, it } from 'vitest';
import type { Choice, Standing } from '../../../shared/planner/choose.ts';
import type { EvaluatedOption } from '../../../shared/planner/evaluateOption.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import type { Situation } from '../../../shared/planner/situation.ts';
import { whyChosen } from '../../../shared/planner/whyChosen.ts';
import { alsoSafe } from '../../../shared/planner/whySafe.ts';

/** Shots that cost so many strokes on average, with little luck between them. */
const standing = (clubName: string, strokes: number, trouble = 0): Standing => ({
  evaluated: {
    perShot: Float64Array.from({ length: 400 }, (_, i) => strokes + (i % 7 === 0 ? 0.001 : 0)),
    option: { technique: 'chip', clubName, playAway: false, strokes, chances: { trouble } },
  } as unknown as EvaluatedOption, // only what these reasons look at
  costStrokes: strokes - 2.5,
  level: false,
});
const units = { system: 'yards', paceM: 0.9144 } as const;

it('says no more of a difference or of safety than there is', () => {
  const chosen = standing('52° wedge', 2.5);
  const toldBeside = (strokes: number): string => {
    const choice: Choice = { standings: [chosen, standing('56° wedge', strokes)], chosen, safe: null };
    return whyChosen({} as Situation, choice, chosen)
      .map((reason) => reasonText(reason, units))
      .join(' ');
  };
  expect(toldBeside(2.51)).toBe('There is next to nothing between it and Chip 56°, the next best (0.01).');
  expect(toldBeside(2.56)).toBe('It saves 0.06 strokes over Chip 56°, the next best.');
  const short = (shortM: number, slopePct: number): string =>
    reasonText({ kind: 'landsShort', values: { shortM, slopePct, cover: 'fringe' } }, units);
  expect(short(1.8, 2)).toMatch(/^It lands 2 paces short, in the fringe, and runs up on ground rising/);
  expect(short(0.9, -3)).toMatch(/^It lands 1 pace short, in the fringe, and runs on over ground falling/);
  const toldOf = (trouble: number, options = 2): string => {
    const one = standing('', 3, trouble);
    return reasonText(alsoSafe({ standings: Array.from({ length: options }, () => one) }, one), units);
  };
  expect(toldOf(0.02)).toMatch(/safe way out/);
  expect(toldOf(0.3)).toBe('Nothing else here keeps clearer of trouble: 30\u00a0%.');
  expect(toldOf(0.3, 1)).toBe('No other shot is at hand: 30\u00a0% trouble.');
});
