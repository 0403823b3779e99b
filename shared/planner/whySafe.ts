import type { Choice, Standing } from './choose.ts';
import type { Reason } from './plan.ts';

/** What the safe way out costs, and what it saves. */
export function safePrice(choice: Choice, standing: Standing): Reason {
  const { option } = standing.evaluated;
  const chosen = choice.chosen.evaluated.option;
  return {
    kind: 'safePrice',
    values: {
      costStrokes: option.strokes - chosen.strokes,
      share: option.chances.trouble,
      chosenShare: chosen.chances.trouble,
    },
  };
}

/** The chosen shot is the safe way out as well. */
export const alsoSafe = ({ standings }: Pick<Choice, 'standings'>, { evaluated }: Standing): Reason => ({
  kind: 'alsoSafe',
  values: { share: evaluated.option.chances.trouble, others: standings.length - 1 },
});

/** Why a shot played away from the flag is worth a thought. */
export function whyAway(choice: Choice, standing: Standing): Reason[] {
  const { option } = standing.evaluated;
  return [
    safePrice(choice, standing),
    {
      kind: 'safeLeave',
      values: { medianLeaveM: option.leave.medianM, offGreenShare: option.chances.offGreen },
    },
  ];
}
