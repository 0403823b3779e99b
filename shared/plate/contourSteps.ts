import { feetFromMetres, metresFromFeet } from '../units/conversions.ts';
import { decimals } from '../units/numerals.ts';
import type { UnitsPreference } from '../units/preference.ts';

const feetM: readonly number[] = [0.1, 0.2, 0.5, 1].map(metresFromFeet);
const metres: readonly number[] = [0.02, 0.05, 0.1, 0.2];

/** Heights between contours to choose from, metres: round in the unit that heights are told in. */
export const contourStepsM = ({ system }: UnitsPreference): readonly number[] =>
  system === 'yards' ? feetM : metres;

/** Place in `contourStepsM` of the step that greens are drawn with unless another is chosen: 0.2 ft or 5 cm. */
export const USUAL_CONTOUR_STEP = 1;

export const usualContourM = (units: UnitsPreference): number =>
  contourStepsM(units)[USUAL_CONTOUR_STEP] ?? NaN;

/** "0.2 ft" or "5 cm". */
export const contourStepWords = (stepM: number, units: UnitsPreference): string =>
  units.system === 'yards'
    ? `${decimals(feetFromMetres(stepM), 1)}\u00a0ft`
    : `${decimals(100 * stepM, 0)}\u00a0cm`;
