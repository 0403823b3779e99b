import { metresFromFeet } from '../units/conversions.ts';
import { leave, withUnit } from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { PlanOption } from './plan.ts';

export interface NamedChance {
  readonly words: string;
  readonly share: number;
}

type Shot = Pick<PlanOption, 'chances' | 'finishCodes'>;

/** How near, how often in two, and how often still off the green. */
export function nearChances({ chances }: Shot, units: UnitsPreference): readonly NamedChance[] {
  const inside = (feet: number): string => `inside ${withUnit(leave(metresFromFeet(feet), units))}`;
  return [
    { words: 'holed', share: chances.holed },
    { words: inside(3), share: chances.insideThreeFeet },
    { words: inside(6), share: chances.insideSixFeet },
    { words: 'up and down', share: chances.upAndDown },
    { words: 'off the green', share: chances.offGreen },
  ];
}

/** Each kind of what the table calls trouble, always in this order; a ball can meet two of them. */
export function troubleChances({ chances, finishCodes }: Shot): readonly NamedChance[] {
  const heavy = coverCode('heavyRough');
  let inHeavyRough = 0;
  for (const code of finishCodes) if (code === heavy) inHeavyRough += 1;
  return [
    { words: 'bunker', share: chances.bunker },
    { words: 'penalty area', share: chances.penalty },
    { words: 'out of bounds', share: chances.outOfBounds },
    { words: 'heavy rough', share: inHeavyRough / Math.max(1, finishCodes.length) },
    { words: 'struck on the way', share: chances.obstructed },
    { words: 'never at rest', share: chances.neverStops },
  ];
}
