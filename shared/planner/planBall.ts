import { HOLE_RADIUS_M } from '../ball/constants.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability, type Candidate } from '../player/availability.ts';
import { nothingRead, packed } from '../terrain/groundReads.ts';
import { ballAndFlag } from './ballAndFlag.ts';
import { choose } from './choose.ts';
import { outOfContention } from './contention.ts';
import { type Effort, effortRules } from './effort.ts';
import { type EvaluatedOption, evaluateOption, summedUp } from './evaluateOption.ts';
import { finalSample, type OptionAim } from './finalSample.ts';
import { fingerprint } from './fingerprint.ts';
import { flagToolsSteps, hasFullTools, lieAt, toolsForBall, within } from './flagTools.ts';
import { leftOutOf } from './leftOutOf.ts';
import { noShot } from './noShot.ts';
import { noted } from './noted.ts';
import type { Plan } from './plan.ts';
import { playAway } from './playAway.ts';
import { reasonsFor } from './reasonsFor.ts';
import type { Scene } from './scene.ts';
import { couldBeSafer, type SafeWay, safeWay } from './safeWay.ts';
import { searchOptions } from './searchOptions.ts';
import { searchRows } from './seekAim.ts';
import type { Situation } from './situation.ts';
import { standardShots } from './standardShots.ts';
import { towardsFlag } from './towardsFlag.ts';

export interface PlanRequest {
  readonly ballId: string;
  readonly flagId: string;
  /** Shots simulated for each option in the final answer; one out of contention has fewer (`partsOfSample`). */
  readonly shotsPerOption: number;
  readonly seed: number;
  /** `full` unless said otherwise. */
  readonly effort?: Effort;
  /** Only these options (`PlanOption.id`), where any of them can be played; */
  readonly among?: readonly string[];
  /** and one other in turn: a count that goes up from question to question. */
  readonly scout?: number;
  /**
   * The map of the green for less than a full plan: `coarse` unless said otherwise; `atHand` takes the full one where it
   * has been made; `light` is for a flag on the move.
   */
  readonly map?: 'light' | 'coarse' | 'atHand';
}

/** Share of the plan that is done, 0 to 1. */
export type Progress = (share: number) => void;

/**
 * The whole plan of one ball to one flag. Throws InputProblem for unknown ids and where the bag
 * and the marks of the player leave no shot. The same scene,
 * request and seed give the same plan to the last bit, unless it asks for the map at hand. A rough or coarse plan holds
 * fewer options and no safe way out: it is there to follow a moving hand and to fill the time until the full one.
 */
export function planBall(scene: Scene, request: PlanRequest, onProgress?: Progress): Plan {
  const steps = planSteps(scene, request);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    onProgress?.(step.value);
  }
}

/**
 * The same in steps, for whoever shows progress or may stop between two options: yields the share that is done. `early`
 * gets a coarse plan on the way to a full one: with the full map at hand the options near the best by the first of their
 * shots (on the sample the same technique in 283 of 288 plans, the same club in 271, and never dearer than the firm choice
 * by more than 0.052 strokes), otherwise one on a coarse map.
 */
export function* planSteps(
  scene: Scene,
  request: PlanRequest,
  early?: (plan: Plan) => void,
): Generator<number, Plan> {
  const { reads } = scene.ground;
  const looks = nothingRead(reads);
  const plan = yield* noted(reads, looks, plainSteps(scene, request, early));
  return { ...plan, readGround: packed(looks) };
}

function* plainSteps(
  scene: Scene,
  request: PlanRequest,
  early?: (plan: Plan) => void,
): Generator<number, Plan> {
  const { ball, flag } = ballAndFlag(scene, request);
  const { player } = scene;
  const effort = request.effort ?? 'full';
  const rules = effortRules[effort];
  const shotsPerOption = Math.min(request.shotsPerOption, rules.mostFinalShots);
  const fullMap = hasFullTools(scene, flag.at);
  if (effort === 'full' && early !== undefined && !fullMap) {
    early(yield* within(0, COLD_COARSE_SHARE, planSteps(scene, { ...request, effort: 'coarse' })));
  }
  const grade =
    effort === 'full' || (request.map === 'atHand' && fullMap)
      ? 'full'
      : request.map === 'light'
        ? 'light'
        : 'coarse';

  let mapShare = 0;
  const toolsSteps = flagToolsSteps(scene, flag.at, grade);
  let made = toolsSteps.next();
  while (made.done !== true) {
    mapShare = made.value;
    yield 0.6 * mapShare;
    made = toolsSteps.next();
  }
  const tools = toolsForBall(scene, made.value, ball.record.moistureOverride);
  const begun = mapShare > 0 ? 0.6 : 0;

  const east = flag.at.eastM - ball.at.eastM;
  const north = flag.at.northM - ball.at.northM;
  const cover = ball.record.coverOverride ?? scene.ground.coverAt(ball.at);
  const situation: Situation = {
    scene,
    tools,
    ball: ball.at,
    flag: flag.at,
    cover,
    quality: ball.record.lie,
    distanceM: Math.max(HOLE_RADIUS_M, length2(east, north)),
    bearing: atan2(east, north),
    searchShots: standardShots(searchRows(rules), request.seed),
    finalShots: standardShots(shotsPerOption, request.seed + 1),
  };
  const { distanceM, bearing, quality } = situation;
  const { candidates, leftOut, marked } = availability(player, cover, quality, distanceM);
  if (candidates.length === 0) throw noShot(scene, ball.record.label, marked);

  const share = (from: number, to: number, done: number): number =>
    begun + (1 - begun) * (from + (to - from) * done);
  const asked = narrowed(candidates, request);
  const search = searchOptions(situation, asked, rules, asked === candidates ? undefined : 1);
  let searched = search.next();
  while (searched.done !== true) {
    yield share(0, 0.4, searched.value);
    searched = search.next();
  }
  const { found, others, givenUp } = searched.value;
  const evaluated: EvaluatedOption[] = [];
  const samples = found.map((one) => finalSample(situation, one));
  const contenders = [...samples];
  const outOfIt = outOfContention(contenders, player);
  const evaluate = (of: OptionAim): EvaluatedOption => {
    const sample = finalSample(situation, of);
    sample.shootTo(Infinity, outOfIt);
    contenders.push(sample);
    return summedUp(situation, sample);
  };
  const planOf = (
    { options, safe }: SafeWay,
    made: { readonly effort: Effort; readonly leftOut: Plan['leftOut'] },
  ): Plan => {
    const { choice, leftOut: elsewhere } = towardsFlag(situation, choose(options, safe, player));
    const lie = lieAt(scene.ground, ball.at, cover, quality, bearing, player.handed);
    return {
      ...made,
      key: fingerprint([
        scene.key,
        request.ballId,
        request.flagId,
        shotsPerOption,
        request.seed,
        made.effort,
      ]),
      ballId: request.ballId,
      flagId: request.flagId,
      seed: request.seed,
      shotsPerOption,
      distanceM: length2(east, north),
      ballCover: cover,
      lieAlongDeg: lie.alongDeg,
      lieAcrossDeg: lie.acrossDeg,
      options: choice.standings.map((standing) => ({
        ...standing.evaluated.option,
        costStrokes: standing.costStrokes,
        level: standing.level,
        reasons: reasonsFor(situation, choice, standing),
      })),
      chosenId: choice.chosen.evaluated.option.id,
      safeId: choice.safe?.evaluated.option.id ?? null,
      leftOut: [...made.leftOut, ...elsewhere],
    };
  };
  function* shotTo(shots: number, from: number, to: number): Generator<number, void> {
    for (const [index, sample] of samples.entries()) {
      sample.shootTo(shots, outOfIt);
      yield share(from, to, (index + 1) / samples.length);
    }
  }
  yield* shotTo(EARLY_SHOTS, 0.4, 0.5);
  if (early !== undefined && fullMap) {
    const first = samples.map((sample) => summedUp(situation, sample));
    early(planOf(safeWay(first, null, evaluate), { effort: 'coarse', leftOut: [] }));
  }
  yield* shotTo(Infinity, 0.5, 0.6);
  for (const sample of samples) evaluated.push(summedUp(situation, sample));
  if (!rules.keepsAll) {
    return planOf(safeWay(evaluated, null, evaluate), {
      effort,
      leftOut: leftOutOf(leftOut, givenUp, asked),
    });
  }
  const rest = others();
  let more = rest.next();
  while (more.done !== true) {
    yield share(0.6, 0.7, more.value);
    more = rest.next();
  }
  for (const [index, one] of more.value.entries()) {
    evaluated.push(evaluate(one));
    yield share(0.7, 0.9, (index + 1) / more.value.length);
  }
  const shot = rules.seeksSafety && couldBeSafer(evaluated) ? playAway(situation, candidates) : null;
  const away = shot === null ? null : evaluateOption(situation, { ...shot, missM: shot.aim.missM }, true);
  return planOf(safeWay(evaluated, away, evaluate), {
    effort,
    leftOut: leftOutOf(leftOut, givenUp, candidates),
  });
}

/** Final shots of an option behind an early answer; the firm one goes on from there. */
const EARLY_SHOTS = 128;
/** Share of the work on a full plan that the coarse one before it takes where the map has to be made. */
const COLD_COARSE_SHARE = 0.15;

function narrowed(
  candidates: readonly Candidate[],
  { among, scout }: Pick<PlanRequest, 'among' | 'scout'>,
): readonly Candidate[] {
  if (among === undefined) return candidates;
  const scouted = scout === undefined ? -1 : scout % candidates.length;
  const wanted = (one: Candidate): boolean => among.includes(`${one.technique}:${one.club.id}`);
  return candidates.some(wanted)
    ? candidates.filter((one, index) => index === scouted || wanted(one))
    : candidates;
}
