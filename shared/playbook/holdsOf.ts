import { holdsText } from '../planner/holdsText.ts';
import type { Plan } from '../planner/plan.ts';
import type { Scene } from '../planner/scene.ts';
import type { SwitchPoints } from '../planner/switchPoints.ts';

/** What has been worked out of how far the choice for a ball and a flag holds. */
export interface KnownHold
  extends
    Pick<Plan, 'ballId' | 'flagId'>,
    Pick<SwitchPoints, 'chosenId' | 'whatIfs' | 'holdsThroughout' | 'holdsForEveryFlag'> {}

/**
 * How far the advice of a plan holds. What was tried of other days says it best; without that, the plans to the hole's other
 * flags tell whether the same shot is within the player's margin of the best for each.
 */
export function holdsOf(
  plan: Plan,
  { flags, player }: Pick<Scene, 'flags' | 'player'>,
  plans: readonly Plan[],
  known: readonly KnownHold[],
): string | null {
  const { ballId, flagId, chosenId } = plan;
  const found = known.find(
    (one) => one.ballId === ballId && one.flagId === flagId && one.chosenId === chosenId,
  );
  if (found !== undefined) return holdsText(found);
  const everyFlag = flags.every(({ record }) =>
    plans
      .find((other) => other.ballId === ballId && other.flagId === record.id)
      ?.options.some(
        ({ id, costStrokes }) => id === chosenId && costStrokes <= player.simplicityMarginStrokes,
      ),
  );
  return flags.length > 1 && everyFlag ? 'every flag on a day like this' : null;
}
