import { nearChances, troubleChances } from '../../shared/planner/chanceList.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { chance, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

/** One chance of several options, in their order. */
interface ChanceRow {
  readonly words: string;
  readonly cells: readonly string[];
}

/** The chances of options beside each other; a kind of trouble that none of them meets is left out. */
export function chanceRows(options: readonly PlanOption[], units: UnitsPreference): readonly ChanceRow[] {
  const near = options.map((option) => nearChances(option, units));
  const trouble = options.map((option) => troubleChances(option));
  const rows = (lists: typeof near, wanted: (shares: readonly number[]) => boolean): readonly ChanceRow[] =>
    (lists[0] ?? []).flatMap(({ words }, i) => {
      const shares = lists.map((list) => list[i]?.share ?? 0);
      return wanted(shares)
        ? [{ words: capital(words), cells: shares.map((share) => withUnit(chance(share))) }]
        : [];
    });
  return [...rows(near, () => true), ...rows(trouble, (shares) => shares.some((share) => share > 0))];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
