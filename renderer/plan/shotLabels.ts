import type { PlanOption } from '../../shared/planner/plan.ts';
import { aim, landing } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

/** "aim 3 ft right", as written beside the start line. */
export function aimLabel({ aimRightM, playAway }: PlanOption, units: UnitsPreference): string {
  if (playAway) return 'aim away';
  const { text, unit } = aim(aimRightM, units);
  const [count, side] = text.split(' ');
  return side === 'R' || side === 'L'
    ? `aim ${count ?? ''} ${unit} ${side === 'R' ? 'right' : 'left'}`
    : 'aim at it';
}

/** "land 2 paces on", as written beside the landing spot; empty for a roll. */
export function landLabel({ landingOnM }: PlanOption, units: UnitsPreference): string {
  if (landingOnM === null) return '';
  const { text } = landing(landingOnM, units);
  const [count, where] = text.split(' ');
  if (where === undefined) return 'land on the edge';
  return `land ${count ?? ''} ${count === '1' || count === '½' ? 'pace' : 'paces'} ${where}`;
}

/** "3 ft right", "at it": a start line by itself. */
export function aimWords(rightM: number, units: UnitsPreference): string {
  const { text, unit } = aim(rightM, units);
  const [count, side] = text.split(' ');
  return side === 'R' || side === 'L' ? `${count ?? ''} ${unit} ${side === 'R' ? 'right' : 'left'}` : text;
}
