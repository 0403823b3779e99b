import type { PlayerLevel } from '../atlas/records.ts';
import { HOLE_RADIUS_M } from '../ball/constants.ts';
import type { Conditions } from '../ball/shot.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability, type Candidate } from '../player/availability.ts';
import { InputProblem } from '../words/inputProblem.ts';
import type { Cover, LieQuality, Moisture, Technique } from '../words/vocabulary.ts';
import { effortRules } from './effort.ts';
import { type EvaluatedOption, evaluateOption } from './evaluateOption.ts';
import { fingerprint } from './fingerprint.ts';
import { flagToolsSteps, toolsForBall } from './flagTools.ts';
import type { PlanOption } from './plan.ts';
import { playAway } from './playAway.ts';
import type { Scene } from './scene.ts';
import { bestAim, searchRows } from './seekAim.ts';
import type { Situation } from './situation.ts';
import { type Aim, shifted, solveAim } from './solveAim.ts';
import { standardShots } from './standardShots.ts';

/** A shot as somebody wants to play it, where it differs from how it would be planned. */
export interface TryRequest {
  readonly ballId: string;
  readonly flagId: string;
  readonly shots: number;
  readonly seed: number;
  readonly technique: Technique;
  readonly clubId: string;
  /** Where to land it; null lands it where it is best. A ball that is rolled has none. */
  readonly landing: PlanePoint | null;
  /** Clubhead speed against what the rest asks for; 1 leaves it. */
  readonly sizeFactor: number;
  /** The start line turned to pass the flag this much further right, metres. */
  readonly aimShiftM: number;
  /** Circumstances other than the scene's; what is left out stays. Another day is given whole. */
  readonly cover?: Cover;
  readonly lie?: LieQuality;
  /** Under the ball alone. */
  readonly moisture?: Moisture;
  readonly conditions?: Conditions;
  readonly level?: PlayerLevel;
  /** The recommendation to compare with, by `PlanOption.id`. */
  readonly advisedId: string;
}

export interface TriedShot {
  readonly tried: PlanOption;
  /** The recommendation under the same circumstances, aimed at its best; null where it cannot be played there. */
  readonly advised: PlanOption | null;
  /** Strokes of the tried shot over the recommendation, shot by shot with the same luck. */
  readonly costStrokes: number | null;
  readonly standardErrorStrokes: number | null;
}

/** The first target is this far past the hole; the search moves it. */
const FIRST_PAST_M = 0.3;

/**
 * Plays one shot many times by the engine of the plan, as it is asked for, and the recommendation beside it. Throws
 * InputProblem for an unknown ball, flag or club. Yields the share done.
 */
export function* tryShotSteps(base: Scene, request: TryRequest): Generator<number, TriedShot> {
  const ball = base.balls.find(({ record }) => record.id === request.ballId);
  const flag = base.flags.find(({ record }) => record.id === request.flagId);
  const club = base.player.bag.find(({ id }) => id === request.clubId);
  if (ball === undefined || flag === undefined || club === undefined) {
    throw new InputProblem(
      'unknown-reference',
      'the ball, the flag or the club of this shot is gone.',
      `Hole ${base.hole.label}`,
      'Choose again.',
    );
  }
  const scene: Scene = {
    ...base,
    conditions: request.conditions ?? base.conditions,
    player: { ...base.player, level: request.level ?? base.player.level },
  };
  const steps = flagToolsSteps(scene, flag.at);
  let step = steps.next();
  while (step.done !== true) {
    yield 0.6 * step.value;
    step = steps.next();
  }
  const east = flag.at.eastM - ball.at.eastM;
  const north = flag.at.northM - ball.at.northM;
  const situation: Situation = {
    scene,
    tools: toolsForBall(
      scene,
      step.value,
      request.moisture ?? (request.conditions === undefined ? ball.record.moistureOverride : undefined),
    ),
    ball: ball.at,
    flag: flag.at,
    cover: request.cover ?? ball.record.coverOverride ?? scene.ground.coverAt(ball.at),
    quality: request.lie ?? ball.record.lie,
    distanceM: Math.max(HOLE_RADIUS_M, length2(east, north)),
    bearing: atan2(east, north),
    searchShots: standardShots(searchRows(effortRules.full), request.seed),
    finalShots: standardShots(request.shots, request.seed + 1),
  };
  const tried = asked(situation, { technique: request.technique, club }, request);
  yield 0.8;
  const advised = advisedOnce(situation, request);
  return {
    tried: asOption(tried),
    advised: advised === null ? null : asOption(advised),
    ...(advised === null
      ? { costStrokes: null, standardErrorStrokes: null }
      : pairedDifference(tried.perShot, advised.perShot)),
  };
}

function asked(situation: Situation, candidate: Candidate, request: TryRequest): EvaluatedOption {
  const { tools, ball, cover, quality, bearing, distanceM } = situation;
  const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing);
  const { aim, missM } = aimed(situation, candidate, shooter, request.landing);
  const changed = {
    clubheadMps: Math.min(shooter.fastestMps, aim.clubheadMps * request.sizeFactor),
    bearing: aim.bearing + request.aimShiftM / distanceM,
  };
  return evaluateOption(situation, { candidate, shooter, aim: changed, missM });
}

function aimed(
  situation: Situation,
  candidate: Candidate,
  shooter: EvaluatedOption['shooter'],
  landing: PlanePoint | null,
): { readonly aim: Aim; readonly missM: number } {
  if (landing === null || candidate.technique === 'putt') return aimedAsPlanned(situation, candidate);
  const solved = solveAim(shooter, situation.ball, landing, 'landing');
  return { aim: solved, missM: solved.missM };
}

/** As the plan aims it: solved to stop at the flag, then moved to where it costs least. */
function aimedAsPlanned(
  situation: Situation,
  candidate: Candidate,
): { readonly aim: Aim; readonly missM: number; readonly shooter: EvaluatedOption['shooter'] } {
  const { tools, ball, flag, cover, quality, bearing, distanceM, searchShots } = situation;
  const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing);
  const solved = solveAim(shooter, ball, shifted(ball, flag, FIRST_PAST_M, 0), 'rest');
  const aim = bestAim({ shooter, solved, distanceM }, tools.field, searchShots, effortRules.full);
  return { aim, missM: solved.missM, shooter };
}

/** The last recommendation on a ground: a hand that moves the landing asks for the same one again and again. */
const lastAdvised = new WeakMap<
  Scene['ground'],
  { readonly key: string; readonly advised: EvaluatedOption | null }
>();

function advisedOnce(situation: Situation, request: TryRequest): EvaluatedOption | null {
  const { ground, key: sceneKey, conditions, player } = situation.scene;
  const { ballId, flagId, shots, seed, advisedId, cover, lie, moisture } = request;
  const key = fingerprint([
    ...[sceneKey, conditions, player.level, ballId, flagId, shots, seed, advisedId],
    ...[cover ?? null, lie ?? null, moisture ?? null, request.conditions === undefined],
  ]);
  const last = lastAdvised.get(ground);
  if (last?.key === key) return last.advised;
  const advised = advisedHere(situation, advisedId);
  lastAdvised.set(ground, { key, advised });
  return advised;
}

function advisedHere(situation: Situation, id: string): EvaluatedOption | null {
  const { scene, cover, quality, distanceM } = situation;
  const { candidates } = availability(scene.player, cover, quality, distanceM);
  if (id.startsWith('away:')) {
    const safe = playAway(situation, candidates);
    return safe === null ? null : evaluateOption(situation, { ...safe, missM: safe.aim.missM }, true);
  }
  const candidate = candidates.find(({ technique, club }) => `${technique}:${club.id}` === id);
  if (candidate === undefined) return null;
  const { aim, missM, shooter } = aimedAsPlanned(situation, candidate);
  return evaluateOption(situation, { candidate, shooter, aim, missM });
}

const asOption = ({ option }: EvaluatedOption): PlanOption => ({
  ...option,
  costStrokes: 0,
  level: false,
  reasons: [],
});

function pairedDifference(
  a: Float64Array,
  b: Float64Array,
): { readonly costStrokes: number; readonly standardErrorStrokes: number } {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] ?? 0) - (b[i] ?? 0);
  const mean = sum / a.length;
  let squares = 0;
  for (let i = 0; i < a.length; i += 1) {
    const off = (a[i] ?? 0) - (b[i] ?? 0) - mean;
    squares += off * off;
  }
  return { costStrokes: mean, standardErrorStrokes: Math.sqrt(squares) / a.length };
}
