import type { ConditionsRecord } from '../../shared/atlas/records.ts';
import { greenSpeed, withUnit } from '../../shared/units/format.ts';
import { firmnessWord } from '../../shared/words/firmnessWord.ts';

type DayNumbers = Pick<ConditionsRecord, 'stimpFt' | 'firmness' | 'moisture'>;

/** Usual sorts of day, each with the numbers it stands for. */
export const dayPresets: readonly { readonly name: string; readonly numbers: DayNumbers }[] = [
  { name: 'dewy morning', numbers: { stimpFt: 8, firmness: 0.3, moisture: 'wet' } },
  { name: 'soft', numbers: { stimpFt: 9, firmness: 0.1, moisture: 'damp' } },
  { name: 'usual', numbers: { stimpFt: 9.5, firmness: 0.5, moisture: 'dry' } },
  { name: 'firm and fast', numbers: { stimpFt: 11.5, firmness: 0.9, moisture: 'dry' } },
];

/** "8 ft, rather soft, wet" */
export const dayNumbers = ({ stimpFt, firmness, moisture }: DayNumbers): string =>
  `${withUnit(greenSpeed(stimpFt))}, ${firmnessWord(firmness)}, ${moisture}`;

/** The preset whose numbers a day has, or undefined. */
export const presetOf = (day: DayNumbers): (typeof dayPresets)[number] | undefined =>
  dayPresets.find(
    ({ numbers }) =>
      numbers.stimpFt === day.stimpFt &&
      numbers.firmness === day.firmness &&
      numbers.moisture === day.moisture,
  );
