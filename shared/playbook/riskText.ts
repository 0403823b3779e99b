import { troubleChances } from '../planner/chanceList.ts';
import type { PlanOption } from '../planner/plan.ts';
import { chance, withUnit } from '../units/format.ts';

/** Chances worth a word, largest first: anything from 1 in 100 up. */
export function riskText(option: PlanOption): string {
  const parts = [...troubleChances(option), { words: 'off the green', share: option.chances.offGreen }];
  const told = parts
    .filter(({ share }) => share >= 0.01)
    .sort((a, b) => b.share - a.share)
    .map(({ words, share }) => `${words} ${withUnit(chance(share))}`);
  return told.length === 0 ? 'none above 1 %' : told.join(', ');
}
