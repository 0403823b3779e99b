import { launchFromStrike } from '../ball/launchFromStrike.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { cos, length2, sin } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import { swingSize } from '../player/swingSize.ts';
import { slots } from '../ball/slots.ts';
import type { Struck } from './whatWasStruck.ts';
import { type Counts, type FinalSample, finalSample, type OptionAim } from './finalSample.ts';
import type { PlanOption } from './plan.ts';
import type { Aim } from './solveAim.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import type { Situation } from './situation.ts';
import { quantileOfSorted, shareEllipses } from './statistics.ts';

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

/** Shoots all of the final sample and sums it up. */
export function evaluateOption(situation: Situation, of: OptionAim, playAway = false): EvaluatedOption {
  const sample = finalSample(situation, of);
  sample.shootTo(Infinity);
  return summedUp(situation, sample, playAway);
}

/** What the shots of a sample so far come to. */
export function summedUp(situation: Situation, sample: FinalSample, playAway = false): EvaluatedOption {
  const { scene, tools, ball, flag } = situation;
  const { candidate, shooter, aim, missM } = sample.of;
  const { shots: count, counts } = sample;
  const { out } = shooter;
  const roll = candidate.technique === 'putt';
  const strokes = sample.strokes();
  const perShot = sample.perShot.slice(0, count);
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    if (Number.isNaN(perShot[i])) perShot[i] = 2 + strokes;
    squares += ((perShot[i] ?? 0) - strokes) * ((perShot[i] ?? 0) - strokes);
  }
  const finishesM = sample.finishesM.slice(0, 2 * count);
  const [ellipse50, ellipse90] = shareEllipses(finishesM, [0.5, 0.9]) as [
    PlanOption['ellipse50'],
    PlanOption['ellipse90'],
  ]; // one ellipse per share asked for
  const leaves = sample.leavesM.slice(0, count).sort();

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
  const share = (of: keyof Counts): number => counts[of] / count;
  const end = playAway ? rest : flag;
  return {
    candidate,
    shooter,
    aim,
    perShot,
    missM,
    struck: [...sample.struckCounts].map(([what, times]) => ({ what, share: times / count })),
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
      finishCodes: sample.finishCodes.slice(0, count),
      landingsM: sample.landingsM.slice(0, roll ? 0 : 2 * count),
      ellipse50,
      ellipse90,
      leave: {
        q25M: quantileOfSorted(leaves, 0.25),
        medianM: quantileOfSorted(leaves, 0.5),
        q75M: quantileOfSorted(leaves, 0.75),
        q90M: quantileOfSorted(leaves, 0.9),
      },
      chances: {
        holed: share('holed'),
        insideThreeFeet: share('insideThreeFeet'),
        insideSixFeet: share('insideSixFeet'),
        upAndDown: sample.chancesOfTwo / count,
        offGreen: share('offGreen'),
        bunker: share('bunker'),
        penalty: share('penalty'),
        outOfBounds: share('outOfBounds'),
        obstructed: share('obstructed'),
        neverStops: share('neverStops'),
        trouble: share('trouble'),
      },
      strokes,
      standardErrorStrokes: Math.sqrt(squares) / count,
    },
  };
}
