import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { SortKey } from '../store/session.ts';

const sizes: readonly PlanOption['size'][] = ['small', 'medium', 'long'];

const values: Readonly<Record<Exclude<SortKey, 'order'>, (option: PlanOption) => number>> = {
  size: ({ size }) => sizes.indexOf(size),
  carry: ({ carryM }) => carryM,
  landing: ({ landingOnM }) => landingOnM ?? -Infinity,
  aim: ({ aimRightM }) => Math.abs(aimRightM),
  leave: ({ leave }) => leave.medianM,
  upAndDown: ({ chances }) => chances.upAndDown,
  trouble: ({ chances }) => chances.trouble,
  strokes: ({ strokes }) => strokes,
  cost: ({ costStrokes }) => costStrokes,
};

/** The advice first and the others by strokes, or by one column; equal values stay in that order. */
export function sortedOptions(plan: Plan, key: SortKey, descending: boolean): readonly PlanOption[] {
  const inOrder = plan.options.toSorted(
    (a, b) => Number(b.id === plan.chosenId) - Number(a.id === plan.chosenId),
  );
  if (key === 'order') return inOrder;
  const value = values[key];
  const sign = descending ? -1 : 1;
  return inOrder.toSorted((a, b) => {
    const [left, right] = [value(a), value(b)];
    return left === right ? 0 : left < right ? -sign : sign;
  });
}
