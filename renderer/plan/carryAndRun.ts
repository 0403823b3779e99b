import type { PlanOption } from '../../shared/planner/plan.ts';
import { distance } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

/** "12½ + 6", without the unit; what rolls from the start has no carry: "rolls 10". */
export const carryAndRun = (
  { landing, carryM, runM }: Pick<PlanOption, 'landing' | 'carryM' | 'runM'>,
  units: UnitsPreference,
): string => {
  const run = distance(runM, units).text;
  return landing === null ? `rolls ${run}` : `${distance(carryM, units).text} + ${run}`;
};
