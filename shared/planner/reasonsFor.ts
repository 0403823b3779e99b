import type { Choice, Standing } from './choose.ts';
import { howItPlays } from './howItPlays.ts';
import type { Reason } from './plan.ts';
import type { Situation } from './situation.ts';
import { whyChosen } from './whyChosen.ts';
import { whyNot } from './whyNot.ts';
import { alsoSafe, safePrice, whyAway } from './whySafe.ts';

/** Reasons said of one option at most. */
const MOST = 5;
/** What is left unsaid first where there are more: how it looks on the way, then what other figures tell as well. */
const LIGHTEST_FIRST = [
  'flightAndRun',
  'staysDown',
  'grain',
  'runsPastFromSameSpot',
  'stopsShortFromSameSpot',
  'fewerUpAndDown',
  'missesGreen',
  'liePlaysLike',
  'landsShort',
  'clearsAndLands',
  'leavesMore',
];

/** In the order given: what it is worth first, then how it plays. */
function weightiest(reasons: readonly Reason[]): readonly Reason[] {
  const kept = [...reasons];
  for (const kind of LIGHTEST_FIRST) {
    if (kept.length <= MOST) break;
    const at = kept.findIndex((reason) => reason.kind === kind);
    if (at >= 0) kept.splice(at, 1);
  }
  return kept.slice(0, MOST);
}

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
      ? [...whyChosen(situation, choice, standing), ...(safe ? [alsoSafe(choice, standing)] : []), ...plays]
      : [...(safe ? [safePrice(choice, standing)] : []), ...whyNot(situation, choice, standing), ...plays];
  return weightiest(reasons);
}
