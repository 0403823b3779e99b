import type { PlanePoint } from '../geometry/points.ts';
import { length2 } from '../numeric/elementary.ts';
import type { Cover } from '../words/vocabulary.ts';
import type { EvaluatedOption } from './evaluateOption.ts';
import { type GroundBetween, groundBetween } from './groundBetween.ts';
import type { Reason } from './plan.ts';
import { ALL_OF_IT, missesTarget } from './searchOptions.ts';
import type { Situation } from './situation.ts';

/** Steeper ground than this is a face, not a place to land. */
const STEEP_PCT = 30;
/** The chance of clearing something is said from this share of strikes that do not. */
const LEAST_STRUCK = 0.02;
/** The ground where a ball lands is read over this much of the way beyond it: where it bounces on, metres. */
const READ_FROM_M = 0.3;
const READ_TO_M = 2;

/** Grain is told of on at least this much of green, metres. */
const LEAST_GRAINED_M = 1.5;

/** How the grain meets a ball that rolls to the flag: with it, against it or from a side; null where there is none to tell. */
function grainOver(
  ground: Situation['scene']['ground'],
  from: PlanePoint,
  flag: PlanePoint,
): 'with' | 'against' | 'toRight' | 'toLeft' | null {
  const { grain } = ground;
  const east = flag.eastM - from.eastM;
  const north = flag.northM - from.northM;
  const middle = { eastM: from.eastM + 0.5 * east, northM: from.northM + 0.5 * north };
  if (grain === undefined || length2(east, north) < LEAST_GRAINED_M || ground.coverAt(middle) !== 'green')
    return null;
  const along = east * grain.eastShare + north * grain.northShare;
  const toRight = north * grain.eastShare - east * grain.northShare;
  if (Math.abs(along) >= Math.abs(toRight)) return along > 0 ? 'with' : 'against';
  return toRight > 0 ? 'toRight' : 'toLeft';
}

/** What the shot does on this ground; for any option. */
export function howItPlays(situation: Situation, e: EvaluatedOption): Reason[] {
  const { scene, ball, flag, distanceM } = situation;
  const { option, shooter } = e;
  const { makeshift } = e.candidate;
  const reasons: Reason[] = [];
  if (makeshift !== undefined) {
    reasons.push({
      kind: makeshift === 'club' ? 'nearestClub' : 'notForThisLie',
      values: { technique: option.technique, clubName: option.clubName },
    });
  }
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
    } else if (onM === null && pastBackM(situation, option.landing) > 0) {
      reasons.push({ kind: 'landsPast', values: { pastM: pastBackM(situation, option.landing) } });
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
  const how = option.playAway ? null : grainOver(scene.ground, option.landing ?? ball, flag);
  if (how !== null) reasons.push({ kind: 'grain', values: { how } });
  for (const { what, share } of e.struck) {
    if (share >= LEAST_STRUCK) reasons.push({ kind: 'clearsChance', values: { what, share: 1 - share } });
  }
  if (Math.abs(e.beyondM) > 0.5 + 0.04 * distanceM && !option.playAway) {
    // Not meant where no size and line of it gets to the flag and stops there.
    const meant = !missesTarget(e.missM, distanceM) && e.aim.clubheadMps < ALL_OF_IT * shooter.fastestMps;
    const kind = e.beyondM > 0 ? (meant ? 'meantPast' : 'runsPast') : meant ? 'meantShort' : 'doesNotReach';
    reasons.push({ kind, values: { lengthM: Math.abs(e.beyondM) } });
  }
  const bad = shooter.spread.heavyShare + shooter.spread.thinShare;
  if (bad >= 0.06) reasons.push({ kind: 'mishits', values: { share: bad } });
  return reasons;
}

/** How far beyond the green that the way to it crosses last, metres; 0 where it crosses none. */
function pastBackM({ scene, ball }: Situation, landing: PlanePoint): number {
  const left = scene.ground.greenCrossings(ball, landing).findLast(({ enters }) => !enters);
  return left === undefined
    ? 0
    : length2(landing.eastM - ball.eastM, landing.northM - ball.northM) - left.distanceM;
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
