import type { PlanePoint } from '../geometry/points.ts';
import { length2 } from '../numeric/elementary.ts';
import { type Cover, techniques } from '../words/vocabulary.ts';
import { type Choice, isLevel, type Standing } from './choose.ts';
import type { EvaluatedOption } from './evaluateOption.ts';
import { type GroundBetween, groundBetween } from './groundBetween.ts';
import { optionName } from './optionName.ts';
import type { Reason } from './plan.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH } from './shooter.ts';
import type { Situation } from './situation.ts';
import { solveAim } from './solveAim.ts';

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

/** Steeper ground than this is a face, not a place to land. */
const STEEP_PCT = 30;
/** The chance of clearing something is said from this share of strikes that do not. */
const LEAST_STRUCK = 0.02;
/** The ground where a ball lands is read over this much of the way beyond it: where it bounces on, metres. */
const READ_FROM_M = 0.3;
const READ_TO_M = 2;

const nameOf = (e: EvaluatedOption): string => optionName(e.option);

function whyChosen(situation: Situation, choice: Choice, standing: Standing): Reason[] {
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
        name: nameOf(best.evaluated),
      },
    });
  } else if (rival !== undefined) {
    reasons.push({
      kind: isLevel(standing.evaluated, rival.evaluated) ? 'bestButLevel' : 'savesStrokes',
      values: { savedStrokes: rival.costStrokes - standing.costStrokes, name: nameOf(rival.evaluated) },
    });
  } else {
    reasons.push({ kind: 'onlyShot', values: { strokes: option.strokes } });
  }
  return reasons;
}

/** What the shot does on this ground; for any option. */
function howItPlays(situation: Situation, e: EvaluatedOption): Reason[] {
  const { scene, ball, flag, distanceM } = situation;
  const { option, shooter } = e;
  const reasons: Reason[] = [];
  if (option.technique === 'putt') {
    const between = groundBetween(scene.ground, scene.conditions, ball, flag);
    const longest = between.offGreen[0];
    if (longest !== undefined && longest.lengthM >= 0.4) {
      reasons.push({
        kind: 'paceInGrass',
        values: {
          cover: longest.cover,
          lengthM: between.offGreen.reduce((sum, o) => sum + o.lengthM, 0),
          lostShare: between.paceLostOffGreen,
        },
      });
    }
    reasons.push({ kind: 'staysDown', values: { medianLeaveM: option.leave.medianM } });
  } else if (option.landing !== null) {
    const before = groundBetween(scene.ground, scene.conditions, ball, option.landing);
    const cleared = before.offGreen[0];
    const slopePct = slopeAlongPct(situation, option.landing);
    const onM = option.landingOnM;
    if (onM !== null && onM >= 0 && cleared !== undefined) {
      reasons.push({
        kind: 'clearsAndLands',
        values: {
          cover: inTheWay(situation, before, cleared.cover),
          clearedM: cleared.lengthM,
          onM,
          slopePct,
        },
      });
    } else if (onM !== null && onM < 0 && Math.abs(slopePct) < STEEP_PCT) {
      reasons.push({
        kind: 'landsShort',
        values: { shortM: -onM, cover: scene.ground.coverAt(option.landing), slopePct },
      });
    }
    reasons.push({
      kind: 'flightAndRun',
      values: { carryShare: option.carryM / Math.max(0.1, option.carryM + option.runM), runM: option.runM },
    });
    if (Math.abs(shooter.lie.alongDeg) >= 2.5) {
      reasons.push({
        kind: 'liePlaysLike',
        values: {
          clubName: option.clubName,
          loftDeg: shooter.strike.loftDeg,
          playsLikeDeg: shooter.strike.loftDeg + shooter.lie.alongDeg,
          alongDeg: shooter.lie.alongDeg,
        },
      });
    }
  }
  for (const { what, share } of e.struck) {
    if (share >= LEAST_STRUCK) reasons.push({ kind: 'clearsChance', values: { what, share: 1 - share } });
  }
  if (Math.abs(e.beyondM) > 0.5 + 0.04 * distanceM && !option.playAway) {
    reasons.push({
      kind: e.beyondM > 0 ? 'meantPast' : 'meantShort',
      values: { lengthM: Math.abs(e.beyondM) },
    });
  }
  const bad = shooter.spread.heavyShare + shooter.spread.thinShare;
  if (bad >= 0.06) reasons.push({ kind: 'mishits', values: { share: bad } });
  return reasons;
}

function whyNot(situation: Situation, choice: Choice, standing: Standing): Reason[] {
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
        name: nameOf(chosen),
      },
    });
  } else if (isLevel(chosen, e)) {
    reasons.push({ kind: 'levelWith', values: { name: nameOf(chosen), costStrokes: extra } });
  } else {
    reasons.push({ kind: 'costsStrokes', values: { costStrokes: extra, name: nameOf(chosen) } });
  }

  const trouble = option.chances.trouble - chosen.option.chances.trouble;
  if (trouble >= 0.03) {
    const { bunker, penalty, outOfBounds, obstructed } = option.chances;
    const worst = Math.max(bunker, penalty, outOfBounds, obstructed);
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
                  : 'obstructed',
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
        name: nameOf(chosen),
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
      values: { lengthM: Math.abs(difference), name: nameOf(chosen) },
    },
  ];
}

function safePrice(choice: Choice, standing: Standing): Reason {
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

const alsoSafe = ({ evaluated }: Standing): Reason => ({
  kind: 'alsoSafe',
  values: { share: evaluated.option.chances.trouble },
});

function whyAway(choice: Choice, standing: Standing): Reason[] {
  const { option } = standing.evaluated;
  return [
    safePrice(choice, standing),
    {
      kind: 'safeLeave',
      values: { medianLeaveM: option.leave.medianM, offGreenShare: option.chances.offGreen },
    },
  ];
}

/** What a person would say the ball flew over. */
function inTheWay(situation: Situation, before: GroundBetween, longest: Cover): string {
  if (situation.cover === 'bunker') return 'lip';
  const sand = before.offGreen.some(({ cover, lengthM }) => cover === 'bunker' && lengthM > 1);
  if (sand) return 'bunker';
  return before.dipM > 0.35 ? 'swale' : before.riseM > 0.5 ? 'bank' : longest;
}

/** Rise of the ground just beyond a landing spot, along the way to the flag, percent. */
function slopeAlongPct(situation: Situation, at: PlanePoint): number {
  const { scene, flag, ball } = situation;
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const length = Math.max(0.05, length2(east, north));
  const height = (beyondM: number): number =>
    scene.ground.heightAt({
      eastM: at.eastM + (beyondM * east) / length,
      northM: at.northM + (beyondM * north) / length,
    });
  return (100 * (height(READ_TO_M) - height(READ_FROM_M))) / (READ_TO_M - READ_FROM_M);
}
