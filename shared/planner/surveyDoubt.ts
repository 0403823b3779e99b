import type { PlanePoint } from '../geometry/points.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability, type Candidate } from '../player/availability.ts';
import { generator } from '../random/generator.ts';
import { fitSurface } from '../terrain/fitSurface.ts';
import { type MeasureHere, measureNext } from '../terrain/measureNext.ts';
import { placesOver } from '../terrain/placesOver.ts';
import { surfaceEnsemble } from '../terrain/surfaceEnsemble.ts';
import { surveyedGround } from '../terrain/surveyedGround.ts';
import { type FlagShooters, type FlagTools, flagToolsSteps, toolsForBall } from './flagTools.ts';
import { atStakeIn } from './lineDoubt.ts';
import type { Plan, PlanOption } from './plan.ts';
import { type PlanRequest, planSteps } from './planBall.ts';
import { type Scene, type SceneBall, type SceneFlag, sceneOn } from './scene.ts';
import { REST_EAST, REST_NORTH } from './shooter.ts';
import { shifted, type Solved, solveAim } from './solveAim.ts';
import { standardShots } from './standardShots.ts';
import { meanStrokes } from './trial.ts';

/** How sure the line of one option is, by the surfaces that the survey allows. Standard deviations. */
export interface OptionDoubt {
  readonly id: string;
  /** Of the start line that would be right, where it passes the flag. */
  readonly aimSdM: number;
  /** Of where the shot as meant on the fitted ground stops: along the line, and to the side of it. */
  readonly alongSdM: number;
  readonly asideSdM: number;
  /** Of its strokes, played by the fitted ground. */
  readonly strokesSd: number;
  /** Share of the surfaces on which planning anew chooses it. */
  readonly chosen: number;
}

/** What the survey leaves open of one plan. */
export interface SurveyDoubt {
  readonly surfaces: number;
  /** The choice on the fitted ground, and the number of surfaces on which it is the choice too. */
  readonly chosenId: string;
  readonly holds: number;
  /** In the order of the plan; those the rough plan drops as hopeless are left out. */
  readonly options: readonly OptionDoubt[];
  /** Where one more height would help these shots most, best first; empty where the ground was only assumed. */
  readonly measureNext: readonly MeasureHere[];
}

export const SURVEY_SURFACES = 8;
/** The scene has the ground on a fine grid; what is open of it needs none. */
export const GRID_APART_M = 4;
/** Shots an option is played with on every surface, the same on all. */
const SHOTS = 64;
/** Where a shot is meant to stop beyond the flag, metres. */
export const FIRST_PAST_M = 0.3;
/** Spots a reading could be taken at: a lattice over the green and its collar. */
const LATTICE_M = 1.5;
const MOST_SPOTS = 150;
const COLLAR_M = 1.5;

/**
 * Plans one ball to one flag anew on surfaces that agree with the evidence as well as the fitted one does, and plays every
 * option there as the fitted ground has it, all with the same shots, so that what differs is the ground alone. Rough plans:
 * they follow the fitted ground's own rough plan, not its full one. Yields the share that is done; whoever stops asking has
 * cancelled. The same scene, request and count give the same answer to the last bit. Throws as `planSteps` does.
 */
export function* surveyDoubtSteps(
  scene: Scene,
  request: PlanRequest,
  surfaces: number = SURVEY_SURFACES,
): Generator<number, SurveyDoubt> {
  const rough: PlanRequest = { ...request, effort: 'rough' };
  const fitted = fitSurface(scene.input, { flatWithoutEvidence: true, cellM: GRID_APART_M });
  const members = surfaceEnsemble(fitted, surfaces, generator(request.seed), scene.surface);
  const whole = members.length + 1;
  const reference = yield* planned(scene, rough, 0, whole);
  const ball = scene.balls.find(({ record }) => record.id === request.ballId) as SceneBall; // planned just now
  const flag = scene.flags.find(({ record }) => record.id === request.flagId) as SceneFlag;
  const played = linesOf(scene, reference, ball, flag, toolsOf(scene, flag));
  const plans: Plan[] = [];
  const errors = played.map((): LineError[] => []);
  for (const surface of members) {
    const on = sceneOn(scene, { input: scene.input, surface, ground: surveyedGround(surface, scene.input) });
    plans.push(yield* planned(on, rough, plans.length + 1, whole));
    const tools = toolsOf(on, flag);
    played.forEach((line, i) => errors[i]?.push(errorOn(on, line, ball, flag, tools, request.seed)));
  }
  const { map } = toolsOf(scene, flag);
  return {
    surfaces: plans.length,
    chosenId: reference.chosenId,
    holds: plans.filter((plan) => plan.chosenId === reference.chosenId).length,
    options: played.map(({ id }, i) => {
      const own = errors[i] ?? [];
      const mean = own.reduce((sum, error) => sum + error.strokes, 0) / own.length;
      return {
        id,
        aimSdM: rootMeanSquare(own.map(({ aimM }) => aimM)),
        alongSdM: rootMeanSquare(own.map(({ alongM }) => alongM)),
        asideSdM: rootMeanSquare(own.map(({ asideM }) => asideM)),
        strokesSd: rootMeanSquare(own.map((error) => error.strokes - mean)),
        chosen: plans.filter((plan) => plan.chosenId === id).length / plans.length,
      };
    }),
    measureNext: measureNext(fitted, atStakeIn(scene, reference, map, ball.at), spotsOn(scene)),
  };
}

/** A shot as the fitted ground has it. */
interface Line {
  readonly id: string;
  readonly candidate: Candidate;
  readonly solved: Solved;
  readonly restEastM: number;
  readonly restNorthM: number;
}

interface LineError {
  readonly aimM: number;
  readonly alongM: number;
  readonly asideM: number;
  readonly strokes: number;
}

function linesOf(
  scene: Scene,
  { options }: Plan,
  ball: SceneBall,
  flag: SceneFlag,
  tools: FlagTools,
): Line[] {
  const { candidates } = availability(
    scene.player,
    coverOf(scene, ball),
    ball.record.lie,
    between(ball, flag),
  );
  return options.flatMap((option: PlanOption): Line[] => {
    const candidate = candidates.find(
      ({ technique, club }) => technique === option.technique && club.id === option.clubId,
    );
    if (candidate === undefined || option.playAway) return [];
    const shooter = shooterOn(scene, candidate, ball, flag, tools);
    const solved = solveAim(shooter, ball.at, shifted(ball.at, flag.at, FIRST_PAST_M, 0), 'rest');
    shooter.perfect(solved.clubheadMps, solved.bearing);
    const { out } = shooter;
    return [
      {
        id: option.id,
        candidate,
        solved,
        restEastM: out[REST_EAST] ?? NaN,
        restNorthM: out[REST_NORTH] ?? NaN,
      },
    ];
  });
}

/** How far off a line of the fitted ground is on another surface. */
function errorOn(
  on: Scene,
  { candidate, solved, restEastM, restNorthM }: Line,
  ball: SceneBall,
  flag: SceneFlag,
  tools: FlagTools,
  seed: number,
): LineError {
  const shooter = shooterOn(on, candidate, ball, flag, tools);
  const right = solveAim(shooter, ball.at, shifted(ball.at, flag.at, FIRST_PAST_M, 0), 'rest', solved);
  const strokes = meanStrokes(shooter, tools.field, solved, standardShots(SHOTS, seed), SHOTS);
  shooter.perfect(solved.clubheadMps, solved.bearing);
  const distanceM = between(ball, flag);
  const ux = (flag.at.eastM - ball.at.eastM) / distanceM;
  const uy = (flag.at.northM - ball.at.northM) / distanceM;
  const dx = (shooter.out[REST_EAST] ?? NaN) - restEastM;
  const dy = (shooter.out[REST_NORTH] ?? NaN) - restNorthM;
  return {
    aimM: (right.bearing - solved.bearing) * distanceM,
    alongM: dx * ux + dy * uy,
    asideM: dx * uy - dy * ux,
    strokes,
  };
}

/** The shooter of a candidate from a ball to a flag. */
export function shooterOn(
  scene: Scene,
  candidate: Candidate,
  ball: SceneBall,
  flag: SceneFlag,
  tools: FlagShooters,
): ReturnType<FlagTools['shooterFrom']> {
  const bearing = atan2(flag.at.eastM - ball.at.eastM, flag.at.northM - ball.at.northM);
  return toolsForBall(scene, tools, ball.record.moistureOverride).shooterFrom(
    candidate,
    ball.at,
    coverOf(scene, ball),
    ball.record.lie,
    bearing,
  );
}

export const coverOf = ({ ground }: Scene, { record, at }: SceneBall) =>
  record.coverOverride ?? ground.coverAt(at);

export const between = (ball: SceneBall, flag: SceneFlag): number =>
  Math.max(0.05, length2(flag.at.eastM - ball.at.eastM, flag.at.northM - ball.at.northM));

export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));

/** The tools the rough plan has just made. */
function toolsOf(scene: Scene, flag: SceneFlag): FlagTools {
  const steps = flagToolsSteps(scene, flag.at, 'coarse');
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

function* planned(scene: Scene, request: PlanRequest, done: number, whole: number): Generator<number, Plan> {
  const steps = planSteps(scene, request);
  let step = steps.next();
  while (step.done !== true) {
    yield (done + step.value) / whole;
    step = steps.next();
  }
  return step.value;
}

/** Spots spread evenly over the green and its collar, further apart where they would be too many. */
function spotsOn({ green: { polygon } }: Scene): readonly PlanePoint[] {
  for (let spacing = LATTICE_M; ; spacing *= 1.15) {
    const spots = placesOver(polygon, spacing, COLLAR_M);
    if (spots.length <= MOST_SPOTS) return spots;
  }
}
