import { type Choice, isLevel, SAME_STROKES, type Standing } from './choose.ts';
import { optionName } from './optionName.ts';
import type { Reason } from './plan.ts';
import type { Situation } from './situation.ts';

/** What the chosen shot is worth beside the next one, or why a cheaper one is left alone. */
export function whyChosen(situation: Situation, choice: Choice, standing: Standing): Reason[] {
  const { option } = standing.evaluated;
  const reasons: Reason[] = [];
  const plain = choice.standings.filter((s) => !s.evaluated.option.playAway);
  const others = plain.filter((s) => s !== standing);
  const best = standing.evaluated.option.playAway ? choice.standings[0] : plain[0];
  const rival = others[0];
  if (best !== undefined && best !== standing && standing.costStrokes > best.costStrokes) {
    reasons.push({
      kind:
        best.evaluated.option.technique === option.technique
          ? 'moreLoftForLittle'
          : isLevel(best.evaluated, standing.evaluated)
            ? 'levelAndSimpler'
            : 'simplerWithinMargin',
      values: {
        costStrokes: standing.costStrokes - best.costStrokes,
        marginStrokes: situation.scene.player.simplicityMarginStrokes,
        name: optionName(best.evaluated.option),
      },
    });
  } else if (rival !== undefined) {
    const savedStrokes = rival.costStrokes - standing.costStrokes;
    reasons.push({
      kind: isLevel(standing.evaluated, rival.evaluated)
        ? 'bestButLevel'
        : savedStrokes < SAME_STROKES
          ? 'savesNextToNothing'
          : 'savesStrokes',
      values: {
        savedStrokes,
        name: optionName(rival.evaluated.option),
      },
    });
  } else {
    reasons.push({ kind: 'onlyShot', values: { strokes: option.strokes } });
  }
  return reasons;
}
