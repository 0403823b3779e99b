import type { PlayerLevel } from '../../../shared/atlas/records.ts';
import { evaluateOption, type EvaluatedOption } from '../../../shared/planner/evaluateOption.ts';
import { flagToolsSteps } from '../../../shared/planner/flagTools.ts';
import { buildScene, type Scene } from '../../../shared/planner/scene.ts';
import { shooter, simulatorsAt } from '../../../shared/planner/shooter.ts';
import type { Situation } from '../../../shared/planner/situation.ts';
import { shifted, solveAim } from '../../../shared/planner/solveAim.ts';
import { standardShots } from '../../../shared/planner/standardShots.ts';
import { effortRules } from '../../../shared/planner/effort.ts';
import { bestAim, searchRows } from '../../../shared/planner/seekAim.ts';
import { availability } from '../../../shared/player/availability.ts';
import { type CoverSpread, strikeSpread } from '../../../shared/player/strikeSpread.ts';
import { techniqueRules } from '../../../shared/player/technique.ts';
import { fullSwingMps } from '../../../shared/player/swingSize.ts';
import type { Technique } from '../../../shared/words/vocabulary.ts';
import { complexDocument } from '../../unit/planner/complex.ts';

/**
 * The standard place of the off-green checks: a level green of 13 m radius with the flag 7 m from its edge,
 * stimp 10, and balls straight back from the flag over one cover, lying clean. The published averages hold
 * every slope, lie and hole location of a tour; this place holds none of that, and the fitted spreads take it
 * up.
 */
export const baselineYards = [10, 20, 30, 40, 50, 60] as const;
export type BaselineCover = 'fairway' | 'lightRough' | 'bunker';

/**
 * Broadie (2012, 2014), tour strokes to hole out at those yards; from memory. Sand at 50 yd is recalled as 2.92 and was
 * found printed as 2.98 (ukgolfacademy.com): the middle.
 */
export const tourBaseline: Readonly<Record<BaselineCover, readonly number[]>> = {
  fairway: [2.18, 2.4, 2.52, 2.6, 2.66, 2.7],
  lightRough: [2.34, 2.59, 2.7, 2.78, 2.87, 2.91],
  bunker: [2.43, 2.53, 2.66, 2.82, 2.95, 3.15],
};

const places = new Map<string, Scene>();

function placeOf(cover: BaselineCover, level: PlayerLevel): Scene {
  const key = JSON.stringify([cover, level]);
  let scene = places.get(key);
  if (scene === undefined) {
    scene = buildScene(
      complexDocument({
        bunker: false,
        surround: cover === 'bunker' ? 'lightRough' : cover,
        flags: [{ id: 'A', at: [0, -6] }],
        balls: [{ id: 'far', at: [0, -6 - 60 * 0.9144], cover }],
        player: { level },
      }),
      'h1',
    );
    places.set(key, scene);
  }
  return scene;
}

/** A spread on trial instead of the shipped one, and the techniques that are played with it; no other is looked at. */
export interface Trial {
  readonly spread: CoverSpread;
  readonly plays: (technique: Technique) => boolean;
}

/** The best lofted shot from so many yards, with the shipped spreads or with one on trial. */
export function bestLofted(
  cover: BaselineCover,
  yards: number,
  level: PlayerLevel,
  shots: number,
  trial?: Trial,
): EvaluatedOption {
  const scene = placeOf(cover, level);
  const flag = scene.flags[0]?.at;
  if (flag === undefined) throw new Error('the standard place has a flag');
  const steps = flagToolsSteps(scene, flag);
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const tools = step.value;
  const distanceM = yards * 0.9144;
  const ball = { eastM: flag.eastM, northM: flag.northM - distanceM };
  const situation: Situation = {
    scene,
    tools,
    ball,
    flag,
    cover,
    quality: 'clean',
    distanceM,
    bearing: 0,
    searchShots: standardShots(searchRows(effortRules.full), 5),
    finalShots: standardShots(shots, 6),
  };
  const simulators = simulatorsAt(scene.ground, scene.conditions, flag);
  let best: EvaluatedOption | null = null;
  for (const candidate of availability(scene.player, cover, 'clean', distanceM).candidates) {
    const { technique } = candidate;
    if (technique === 'putt' || technique === 'bumpAndRun' || technique === 'highSoft') continue;
    if (trial?.plays(technique) === false) continue;
    const club = shooter({
      simulators,
      conditions: scene.conditions,
      handed: 'right',
      candidate,
      from: ball,
      lie: { cover, quality: 'clean', alongDeg: 0, acrossDeg: 0 },
      spread: strikeSpread(level, technique, cover, 'clean', 'dry', distanceM, trial?.spread),
      fastestMps: fullSwingMps(level) * techniqueRules[technique].mostOfFullSwing,
    });
    const solved = solveAim(club, ball, shifted(ball, flag, 0.3, 0), 'rest');
    const origin = { shooter: club, solved, distanceM };
    const aim = bestAim(origin, tools.field, situation.searchShots, effortRules.full);
    const evaluated = evaluateOption(situation, { candidate, shooter: club, aim, missM: solved.missM });
    if (best === null || evaluated.option.strokes < best.option.strokes) best = evaluated;
  }
  if (best === null) throw new Error(`nothing reaches from ${String(yards)} yd of ${cover}`);
  return best;
}

/** Mean distance left, metres; a holed shot leaves none. */
export function meanLeaveM(evaluated: EvaluatedOption, flag: { eastM: number; northM: number }): number {
  const { finishesM, finishCodes } = evaluated.option;
  let sum = 0;
  for (let i = 0; i < finishCodes.length; i += 1) {
    if (finishCodes[i] === 254) continue;
    sum += Math.hypot((finishesM[2 * i] ?? 0) - flag.eastM, (finishesM[2 * i + 1] ?? 0) - flag.northM);
  }
  return sum / finishCodes.length;
}
