import { HOLE_RADIUS_M } from '../ball/constants.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability } from '../player/availability.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { choose } from './choose.ts';
import { type EvaluatedOption, evaluateOption } from './evaluateOption.ts';
import { fingerprint } from './fingerprint.ts';
import { flagToolsSteps, lieAt } from './flagTools.ts';
import type { Plan } from './plan.ts';
import { playAway } from './playAway.ts';
import { reasonsFor } from './reasonsFor.ts';
import type { Scene } from './scene.ts';
import type { Shooter } from './shooter.ts';
import type { Situation } from './situation.ts';
import { shifted, type Solved, solveAim } from './solveAim.ts';
import { standardShots } from './standardShots.ts';
import { type Improved, improveAim } from './trial.ts';
import { wayOut } from './wayOut.ts';

export interface PlanRequest {
  readonly ballId: string;
  readonly flagId: string;
  /** Shots simulated for each option in the final answer. */
  readonly shotsPerOption: number;
  readonly seed: number;
}

/** Share of the plan that is done, 0 to 1. */
export type Progress = (share: number) => void;

const SEARCH_SHOTS = 64;
/** The first target is this far past the hole; the search moves it. */
const FIRST_PAST_M = 0.3;
/** An option this far behind after the first look is not searched further. */
const HOPELESS_STROKES = 0.15;
/** One that starts this far behind is not even looked at. */
const HOPELESS_AT_ONCE_STROKES = 0.5;
/** A perfect strike that ends farther than this from its target (plus a share of the way) cannot play the shot. */
const MISS_M = 1.5;
/** With fewer options than this that get there, the others are tried as ways out. */
const FEW_LOOKS = 3;
const MISS_SHARE = 0.3;

/**
 * The whole plan of one ball to one flag. Throws InputProblem for unknown ids and an empty bag. The same scene,
 * request and seed give the same plan to the last bit.
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
 * The same in steps, for whoever shows progress or may stop between two options: yields the share that is done.
 */
export function* planSteps(scene: Scene, request: PlanRequest): Generator<number, Plan> {
  const ball = scene.balls.find((b) => b.record.id === request.ballId);
  const flag = scene.flags.find((f) => f.record.id === request.flagId);
  const place = `Hole ${scene.hole.label}`;
  if (ball === undefined) {
    throw new InputProblem(
      'unknown-ball',
      `there is no ball “${request.ballId}”.`,
      place,
      'Choose one of its balls.',
    );
  }
  if (flag === undefined) {
    throw new InputProblem(
      'unknown-flag',
      `there is no flag “${request.flagId}”.`,
      place,
      'Choose one of its flags.',
    );
  }
  if (!Number.isInteger(request.shotsPerOption) || request.shotsPerOption < 1) {
    throw new InputProblem(
      'bad-shot-count',
      'the number of shots is not a positive whole number.',
      place,
      'Ask for 1 or more.',
    );
  }
  const { player } = scene;

  let mapShare = 0;
  const toolsSteps = flagToolsSteps(scene, flag.at);
  let made = toolsSteps.next();
  while (made.done !== true) {
    mapShare = made.value;
    yield 0.4 * mapShare;
    made = toolsSteps.next();
  }
  const tools = made.value;
  const begun = mapShare > 0 ? 0.4 : 0;

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
    searchShots: standardShots(SEARCH_SHOTS, request.seed),
    finalShots: standardShots(request.shotsPerOption, request.seed + 1),
  };
  const { distanceM, bearing, quality } = situation;
  const { candidates, leftOut } = availability(player, cover, quality, distanceM);
  if (candidates.length === 0) {
    throw new InputProblem(
      'empty-bag',
      `${player.name} has no club for this shot.`,
      place,
      'Add a club to the bag.',
    );
  }

  // A first look at every option, then the search in full for those still in the running.
  const target = shifted(ball.at, flag.at, FIRST_PAST_M, 0);
  const looks: { shooter: Shooter; solved: Solved; improved: Improved; index: number }[] = [];
  const unreachable: { shooter: Shooter; solved: Solved; index: number }[] = [];
  let best = Infinity;
  for (const [index, candidate] of candidates.entries()) {
    const shooter = tools.shooterFrom(candidate, ball.at, cover, quality, bearing);
    const solved = solveAim(shooter, ball.at, target, 'rest');
    if (solved.missM > MISS_M + MISS_SHARE * distanceM) {
      unreachable.push({ shooter, solved, index });
    } else {
      const improved = improveAim(
        shooter,
        tools.field,
        solved,
        distanceM,
        situation.searchShots,
        null,
        best + HOPELESS_AT_ONCE_STROKES,
      );
      best = Math.min(best, improved.strokes);
      looks.push({ shooter, solved, improved, index });
    }
    yield begun + (1 - begun) * 0.4 * ((index + 1) / candidates.length);
  }
  if (looks.length < FEW_LOOKS) {
    // Little gets there: a face or a crown in the way. What gets out best is still worth a look.
    for (const blocked of unreachable.splice(0)) {
      const found = wayOut(blocked.shooter, tools.field, blocked.solved, bearing, situation.searchShots);
      const improved = improveAim(
        blocked.shooter,
        tools.field,
        found,
        distanceM,
        situation.searchShots,
        null,
      );
      best = Math.min(best, improved.strokes);
      looks.push({ ...blocked, solved: found, improved });
    }
  }
  const evaluated: EvaluatedOption[] = [];
  for (const look of looks) {
    const candidate = candidates[look.index];
    if (candidate === undefined) continue;
    const { aim } =
      look.improved.strokes <= best + HOPELESS_STROKES
        ? improveAim(look.shooter, tools.field, look.solved, distanceM, situation.searchShots, look.improved)
        : look.improved;
    evaluated.push(evaluateOption(situation, candidate, look.shooter, aim, look.solved.missM, false));
    yield begun + (1 - begun) * (0.4 + 0.5 * (evaluated.length / looks.length));
  }
  const safe = playAway(situation, candidates);
  if (safe !== null) {
    evaluated.push(evaluateOption(situation, safe.candidate, safe.shooter, safe.aim, safe.aim.missM, true));
  }
  const choice = choose(evaluated, player);
  const lie = lieAt(scene.ground, ball.at, cover, quality, bearing, player.handed);
  return {
    key: fingerprint([scene.key, request.ballId, request.flagId, request.shotsPerOption, request.seed]),
    ballId: request.ballId,
    flagId: request.flagId,
    seed: request.seed,
    shotsPerOption: request.shotsPerOption,
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
    leftOut: [
      ...leftOut.map(({ technique, kind }) => ({ id: technique, reason: { kind, values: { technique } } })),
      ...unreachable.flatMap(({ index }) => {
        const candidate = candidates[index];
        return candidate === undefined
          ? []
          : [
              {
                id: `${candidate.technique}:${candidate.club.id}`,
                reason: {
                  kind: 'cannotStop',
                  values: { technique: candidate.technique, clubName: candidate.club.name },
                },
              },
            ];
      }),
    ],
  };
}
