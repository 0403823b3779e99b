import { length2 } from '../numeric/elementary.ts';
import { techniques } from '../words/vocabulary.ts';
import { type Choice, isLevel, type Standing } from './choose.ts';
import type { EvaluatedOption } from './evaluateOption.ts';
import { optionName } from './optionName.ts';
import type { Reason } from './plan.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH } from './shooter.ts';
import type { Situation } from './situation.ts';
import { solveAim } from './solveAim.ts';

/** What a rejected shot gives away to the chosen one, and where. */
export function whyNot(situation: Situation, choice: Choice, standing: Standing): Reason[] {
  const e = standing.evaluated;
  const { option } = e;
  const chosen = choice.chosen.evaluated;
  const extra = option.strokes - chosen.option.strokes;
  const harder = techniques.indexOf(option.technique) > techniques.indexOf(chosen.option.technique);
  const reasons: Reason[] = [];
  if (situation.scene.player.repertoire[option.technique] === 'learning') {
    reasons.push({
      kind: 'stillLearning',
      values: { technique: option.technique, marginStrokes: situation.scene.player.simplicityMarginStrokes },
    });
  }
  if (extra <= 0) {
    reasons.push({
      kind:
        option.technique === chosen.option.technique
          ? 'lessLoftForLittle'
          : harder
            ? 'harderForLittle'
            : 'learningForLittle',
      values: {
        savedStrokes: -extra,
        marginStrokes: situation.scene.player.simplicityMarginStrokes,
        name: optionName(chosen.option),
      },
    });
  } else if (isLevel(chosen, e)) {
    reasons.push({ kind: 'levelWith', values: { name: optionName(chosen.option), costStrokes: extra } });
  } else {
    reasons.push({ kind: 'costsStrokes', values: { costStrokes: extra, name: optionName(chosen.option) } });
  }

  const trouble = option.chances.trouble - chosen.option.chances.trouble;
  if (trouble >= 0.03) {
    const { bunker, penalty, outOfBounds, obstructed, neverStops } = option.chances;
    const worst = Math.max(bunker, penalty, outOfBounds, obstructed, neverStops);
    reasons.push({
      kind: 'moreTrouble',
      values: {
        share: option.chances.trouble,
        chosenShare: chosen.option.chances.trouble,
        what:
          worst < 0.02
            ? 'heavyRough'
            : worst === bunker
              ? 'bunker'
              : worst === penalty
                ? 'penaltyArea'
                : worst === outOfBounds
                  ? 'outOfBounds'
                  : worst === obstructed
                    ? 'obstructed'
                    : 'neverStops',
      },
    });
  }
  reasons.push(...sameLanding(situation, chosen, e));
  const wider = option.leave.medianM - chosen.option.leave.medianM;
  if (wider > 0.15 + 0.08 * chosen.option.leave.medianM) {
    reasons.push({
      kind: 'leavesMore',
      values: {
        medianLeaveM: option.leave.medianM,
        chosenLeaveM: chosen.option.leave.medianM,
        name: optionName(chosen.option),
      },
    });
  }
  const off = option.chances.offGreen - chosen.option.chances.offGreen;
  if (off >= 0.05) {
    reasons.push({
      kind: 'missesGreen',
      values: { share: option.chances.offGreen, chosenShare: chosen.option.chances.offGreen },
    });
  }
  const fewer = chosen.option.chances.upAndDown - option.chances.upAndDown;
  if (fewer >= 0.02) {
    reasons.push({
      kind: 'fewerUpAndDown',
      values: { share: option.chances.upAndDown, chosenShare: chosen.option.chances.upAndDown },
    });
  }
  return reasons;
}

/** The same landing spot with the other club: how much farther or shorter it stops. */
function sameLanding(situation: Situation, chosen: EvaluatedOption, other: EvaluatedOption): Reason[] {
  const spot = chosen.option.landing;
  const { ball } = situation;
  if (spot === null || other.option.landing === null || other.candidate.club.id === chosen.candidate.club.id)
    return [];
  const aim = solveAim(other.shooter, ball, spot, 'landing', other.aim);
  if (aim.missM > 0.4) return [];
  const { out } = other.shooter;
  other.shooter.perfect(aim.clubheadMps, aim.bearing);
  const run = length2(
    (out[REST_EAST] ?? 0) - (out[LAND_EAST] ?? 0),
    (out[REST_NORTH] ?? 0) - (out[LAND_NORTH] ?? 0),
  );
  const difference = run - chosen.option.runM;
  if (Math.abs(difference) < 0.5) return [];
  return [
    {
      kind: difference > 0 ? 'runsPastFromSameSpot' : 'stopsShortFromSameSpot',
      values: { lengthM: Math.abs(difference), name: optionName(chosen.option) },
    },
  ];
}
