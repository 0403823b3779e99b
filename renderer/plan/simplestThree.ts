import type { PlayerRecord } from '../../shared/atlas/records.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { techniques } from '../../shared/words/vocabulary.ts';

/**
 * The advice, then the simplest shots within the player's margin of the best (those marked mine before those being learned,
 * another shot before another club for the same one), and where these are too few the nearest by strokes, a shot being
 * learned carrying the margin on top as it does for the advice.
 */
export function simplestThree(
  { options, chosenId }: Pick<Plan, 'options' | 'chosenId'>,
  {
    repertoire,
    simplicityMarginStrokes: margin,
  }: Pick<PlayerRecord, 'repertoire' | 'simplicityMarginStrokes'>,
): readonly PlanOption[] {
  const learning = ({ technique }: PlanOption): number => Number(repertoire[technique] === 'learning');
  const priced = (option: PlanOption): number => option.costStrokes + margin * learning(option);
  const advice = options.filter(({ id }) => id === chosenId);
  const others = options.filter(({ id, playAway }) => id !== chosenId && !playAway);
  const goodEnough = others.filter(({ level, costStrokes }) => level || costStrokes <= margin);
  /** How many better clubs there are for the same shot; options come cheapest first. */
  const clubsBefore = (option: PlanOption): number =>
    [...advice, ...goodEnough.slice(0, goodEnough.indexOf(option))].filter(
      ({ technique }) => technique === option.technique,
    ).length;
  const simple = goodEnough.toSorted(
    (a, b) =>
      learning(a) - learning(b) ||
      clubsBefore(a) - clubsBefore(b) ||
      techniques.indexOf(a.technique) - techniques.indexOf(b.technique),
  );
  const nearest = others
    .filter((option) => !goodEnough.includes(option))
    .toSorted((a, b) => priced(a) - priced(b));
  return [...advice, ...simple, ...nearest].slice(0, 3);
}
