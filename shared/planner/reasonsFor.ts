import type { Choice, Standing } from './choose.ts';
import { howItPlays } from './howItPlays.ts';
import type { Reason } from './plan.ts';
import type { Situation } from './situation.ts';
import { whyChosen } from './whyChosen.ts';
import { whyNot } from './whyNot.ts';
import { alsoSafe, safePrice, whyAway } from './whySafe.ts';

/** Reasons said of one option at most: the weightiest come first. */
const MOST = 5;

/**
 * Why an option stands where it does, as computed differences: what it does to the ground, what it costs
 * against the chosen one, and what goes wrong with it. At least two for every option.
 */
export function reasonsFor(situation: Situation, choice: Choice, standing: Standing): readonly Reason[] {
  const plays = howItPlays(situation, standing.evaluated);
  const safe = standing === choice.safe;
  const reasons = standing.evaluated.option.playAway
    ? [...whyAway(choice, standing), ...plays]
    : standing === choice.chosen
      ? [...whyChosen(situation, choice, standing), ...(safe ? [alsoSafe(standing)] : []), ...plays]
      : [...(safe ? [safePrice(choice, standing)] : []), ...whyNot(situation, choice, standing), ...plays];
  return reasons.slice(0, MOST);
}
