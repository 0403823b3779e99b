import type { WhatIf } from '../../shared/planner/switchPoints.ts';
import { greenSpeed, wind, withUnit } from '../../shared/units/format.ts';
import { decimals } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { firmnessWord } from '../../shared/words/firmnessWord.ts';

/** "Green speed over 11 ft", "Ground firmer than 0.65 of 1, rather firm": a day or flag, with its switch point where that is known. */
export function circumstance(
  { what, tried, switchAt }: Pick<WhatIf, 'what' | 'tried' | 'switchAt'>,
  day: { readonly stimpFt: number; readonly firmness: number },
  units: UnitsPreference,
): string {
  const value = typeof tried === 'number' ? tried : NaN;
  switch (what) {
    case 'stimp':
      return `Green speed ${value > day.stimpFt ? 'over' : 'under'} ${withUnit(greenSpeed(switchAt ?? value))}`;
    case 'firmness': {
      const way = value > day.firmness ? 'firmer' : 'softer';
      return switchAt === null
        ? `${way === 'firmer' ? 'Firmer' : 'Softer'} ground`
        : `Ground ${way} than ${decimals(Math.round(20 * switchAt) / 20, 2)} of 1, ${firmnessWord(switchAt)}`;
    }
    case 'moisture':
      return `Ground ${tried}`;
    case 'slope':
      return `Half a percent more ${value > 0 ? 'uphill' : 'downhill'}`;
    case 'wind':
      return `${withUnit(wind(Math.abs(value), units))} of wind ${value > 0 ? 'against' : 'behind'}`;
    case 'flagstick':
      return `Flagstick ${tried === 'in' ? 'left in' : 'out'}`;
    case 'level':
      return typeof tried === 'number' ? `A player of handicap ${tried}` : `A ${tried} player`;
    case 'flag':
      return `Flag ${tried}`;
  }
}
