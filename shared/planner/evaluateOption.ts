import { launchFromStrike } from '../ball/launchFromStrike.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { cos, length2, sin } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import { swingSize } from '../player/swingSize.ts';
import { coverCode } from '../words/vocabulary.ts';
import { slots } from '../ball/slots.ts';
import { type Struck, whatWasStruck } from './whatWasStruck.ts';
import { type outOfContention, partsOfSample } from './contention.ts';
import type { PlanOption } from './plan.ts';
import type { Aim } from './solveAim.ts';
import {
  CODE,
  CODE_HOLED,
  CODE_LOST,
  isLost,
  LAND_EAST,
  LAND_NORTH,
  REST_EAST,
  REST_NORTH,
} from './shooter.ts';
import type { Shooter } from './shooter.ts';
import type { Situation } from './situation.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';
import { quantileOfSorted, shareEllipses } from './statistics.ts';
import { strokesOf, withReplays } from './trial.ts';

/** An option with its figures, before it is set beside the others. */
export interface EvaluatedOption {
  readonly option: Omit<PlanOption, 'costStrokes' | 'level' | 'reasons'>;
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly aim: Aim;
  /** Strokes of each shot, a lost one counted with its replay, for paired comparison. */
  readonly perShot: Float64Array;
  /**
   * Where the strike as meant stops with the hole covered, metres beyond the flag along the line (negative
   * short).
   */
  readonly beyondM: number;
  readonly missM: number;
  /** What stood in the way of the shots, and of what share of them. */
  readonly struck: readonly { readonly what: Struck; readonly share: number }[];
}

export const THREE_FEET_M = 0.9144;
const BUNKER = coverCode('bunker');
const GREEN = coverCode('green');
const PENALTY = coverCode('penaltyArea');
const OUT = coverCode('outOfBounds');
const HEAVY = coverCode('heavyRough');
/** Chance to hole out in two from off the green: a chip-in, where no putt is left. Assumed. */
const CHIP_IN = 0.03;

/**
 * Shoots the final sample and sums it up.
 * @param outOfIt told the strokes and the share in trouble after a part of the sample: whether that will do
 */
export function evaluateOption(
  situation: Situation,
  candidate: Candidate,
  shooter: Shooter,
  aim: Aim,
  missM: number,
  playAway: boolean,
  outOfIt?: ReturnType<typeof outOfContention>,
): EvaluatedOption {
  const { scene, tools, ball, flag, finalShots } = situation;
  const { map, field } = tools;
  const out = shooter.out;
  const most = finalShots.length / DRAWS_PER_SHOT;
  const roll = candidate.technique === 'putt';
  let finishesM = new Float64Array(2 * most);
  let finishCodes = new Uint8Array(most);
  let landingsM = new Float64Array(roll ? 0 : 2 * most);
  let perShot = new Float64Array(most);
  let leaves = new Float64Array(most);
  let count = most;
  let sum = 0;
  let lost = 0;
  let holed = 0;
  let three = 0;
  let six = 0;
  let two = 0;
  let offGreen = 0;
  let bunker = 0;
  let penalty = 0;
  let outOfBounds = 0;
  let obstructed = 0;
  let neverStops = 0;
  const struckCounts = new Map<Struck, number>();
  let trouble = 0;
  let parts = 0;
  shooter.perfect(aim.clubheadMps, aim.bearing);
  const metAsMeant = out[slots.obstructed] ?? 0;
  for (let i = 0; i < count; i += 1) {
    const part = partsOfSample[parts];
    if (i === part?.shots) {
      parts += 1;
      if (outOfIt?.(part, withReplays(sum, i, lost), trouble / i) === true) {
        count = i;
        finishesM = finishesM.slice(0, 2 * i);
        finishCodes = finishCodes.slice(0, i);
        landingsM = landingsM.slice(0, roll ? 0 : 2 * i);
        perShot = perShot.slice(0, i);
        leaves = leaves.slice(0, i);
        break;
      }
    }
    shooter.struck(aim.clubheadMps, aim.bearing, finalShots, i);
    const code = out[CODE] ?? 0;
    const east = out[REST_EAST] ?? 0;
    const north = out[REST_NORTH] ?? 0;
    finishesM[2 * i] = east;
    finishesM[2 * i + 1] = north;
    finishCodes[i] = code;
    if (!roll) {
      landingsM[2 * i] = out[LAND_EAST] ?? 0;
      landingsM[2 * i + 1] = out[LAND_NORTH] ?? 0;
    }
    const left = code === CODE_HOLED ? 0 : length2(east - flag.eastM, north - flag.northM);
    leaves[i] = left;
    const struck = whatWasStruck(
      scene.ground,
      out[slots.obstructed] ?? 0,
      metAsMeant,
      out[LAND_EAST] ?? 0,
      out[LAND_NORTH] ?? 0,
    );
    if (isLost(code)) {
      lost += 1;
      perShot[i] = NaN;
    } else {
      const strokes = strokesOf(shooter, field, code);
      perShot[i] = strokes;
      sum += strokes;
    }
    if (code === CODE_HOLED) holed += 1;
    if (left <= THREE_FEET_M) three += 1;
    if (left <= 2 * THREE_FEET_M) six += 1;
    two += code === CODE_HOLED ? 1 : code === GREEN ? map.makeAt(east, north) : isLost(code) ? 0 : CHIP_IN;
    if (code !== GREEN && code !== CODE_HOLED) offGreen += 1;
    if (code === BUNKER) bunker += 1;
    if (code === PENALTY) penalty += 1;
    if (code === CODE_LOST) neverStops += 1;
    if (code === OUT) outOfBounds += 1;
    if (struck !== null) {
      obstructed += 1;
      struckCounts.set(struck, (struckCounts.get(struck) ?? 0) + 1);
    }
    if (struck !== null || code === BUNKER || isLost(code) || code === HEAVY) trouble += 1;
  }
  const strokes = withReplays(sum, count, lost);
  for (let i = 0; i < count; i += 1) if (Number.isNaN(perShot[i])) perShot[i] = 2 + strokes;
  let squares = 0;
  for (let i = 0; i < count; i += 1) squares += ((perShot[i] ?? 0) - strokes) * ((perShot[i] ?? 0) - strokes);
  const [ellipse50, ellipse90] = shareEllipses(finishesM, [0.5, 0.9]) as [
    PlanOption['ellipse50'],
    PlanOption['ellipse90'],
  ]; // one ellipse per share asked for
  leaves.sort();

  const degrees = 180 / Math.PI;
  shooter.perfect(aim.clubheadMps, aim.bearing);
  const carryM = roll ? 0 : (out[slots.carryM] ?? 0);
  const landing: PlanePoint = { eastM: out[LAND_EAST] ?? 0, northM: out[LAND_NORTH] ?? 0 };
  const rest: PlanePoint = { eastM: out[REST_EAST] ?? 0, northM: out[REST_NORTH] ?? 0 };
  const start = roll ? ball : landing;
  const strike = {
    ...shooter.strike,
    clubheadMps: aim.clubheadMps,
    bearingDeg: aim.bearing * degrees,
  };
  const launch = launchFromStrike(strike, shooter.lie, shooter.conditions);
  const traced = tools.simulators.covered.trace(ball.eastM, ball.northM, launch);
  const startLine = (launch.bearingDeg * Math.PI) / 180;
  const ux = sin(startLine);
  const uy = cos(startLine);
  const de = flag.eastM - ball.eastM;
  const dn = flag.northM - ball.northM;
  const share = (value: number): number => value / count;
  const end = playAway ? rest : flag;
  return {
    candidate,
    shooter,
    aim,
    perShot,
    missM,
    struck: [...struckCounts].map(([what, times]) => ({ what, share: times / count })),
    beyondM:
      ((rest.eastM - flag.eastM) * de + (rest.northM - flag.northM) * dn) /
      Math.max(0.05, situation.distanceM),
    option: {
      id: `${playAway ? 'away:' : ''}${candidate.technique}:${candidate.club.id}`,
      technique: candidate.technique,
      clubId: candidate.club.id,
      clubName: candidate.club.name,
      playAway,
      clubheadMps: aim.clubheadMps,
      size: swingSize(
        scene.player.level,
        candidate.technique,
        aim.clubheadMps,
        candidate.club.carriesM,
        carryM,
      ),
      leanDeg: shooter.strike.leanDeg,
      faceOpenDeg: shooter.strike.faceOpenDeg,
      aimBearingDeg: launch.bearingDeg,
      // The start line passes the flag's nearest point this far to the flag's right.
      aimRightM: -(de * uy - dn * ux),
      landing: roll ? null : landing,
      landingOnM: roll ? null : scene.ground.distanceOntoGreen(ball, landing),
      carryM,
      runM: length2(rest.eastM - start.eastM, rest.northM - start.northM),
      apexM: Math.max(0, out[slots.apexM] ?? 0),
      runRiseM: scene.ground.heightAt(end) - scene.ground.heightAt(start),
      path: roll ? { ...traced.path, touchdowns: [] } : traced.path,
      finishesM,
      finishCodes,
      landingsM,
      ellipse50,
      ellipse90,
      leave: {
        q25M: quantileOfSorted(leaves, 0.25),
        medianM: quantileOfSorted(leaves, 0.5),
        q75M: quantileOfSorted(leaves, 0.75),
        q90M: quantileOfSorted(leaves, 0.9),
      },
      chances: {
        holed: share(holed),
        insideThreeFeet: share(three),
        insideSixFeet: share(six),
        upAndDown: share(two),
        offGreen: share(offGreen),
        bunker: share(bunker),
        penalty: share(penalty),
        outOfBounds: share(outOfBounds),
        obstructed: share(obstructed),
        neverStops: share(neverStops),
        trouble: share(trouble),
      },
      strokes,
      standardErrorStrokes: Math.sqrt(squares) / count,
    },
  };
}
