import { rollingFromStimp } from '../ball/coverPhysics.ts';
import { availability } from '../player/availability.ts';
import { generator } from '../random/generator.ts';
import { fitSurface } from '../terrain/fitSurface.ts';
import { type AtStake, type MeasureHere, measureNext } from '../terrain/measureNext.ts';
import { placesOver } from '../terrain/placesOver.ts';
import { surfaceEnsemble } from '../terrain/surfaceEnsemble.ts';
import { surveyedGround } from '../terrain/surveyedGround.ts';
import { flagShooters } from './flagTools.ts';
import { breakTerms } from './lineDoubt.ts';
import type { PlanOption } from './plan.ts';
import { type Scene, type SceneBall, type SceneFlag, sceneOn } from './scene.ts';
import { shifted, solveAim } from './solveAim.ts';
import {
  between,
  coverOf,
  FIRST_PAST_M,
  GRID_APART_M,
  rootMeanSquare,
  shooterOn,
  SURVEY_SURFACES,
} from './surveyDoubt.ts';

/** A shot that is played whatever the ground turns out to be: only its line is asked about. */
export interface LineAsked {
  readonly ballId: string;
  readonly option: Pick<PlanOption, 'id' | 'technique' | 'clubId' | 'landing' | 'playAway'>;
}

/** How sure the lines to one flag are by the survey. */
export interface SureLines {
  readonly flagId: string;
  /** One standard deviation of where the right start line passes the flag, metres, by ball and option. */
  readonly lines: readonly { readonly ballId: string; readonly optionId: string; readonly aimSdM: number }[];
  /** Where one more height would help the unsure ones most, best first. */
  readonly measureNext: readonly MeasureHere[];
}

/** A line less sure than this is told of: a step of the printed aim. Metres. */
export const UNSURE_AIM_M = 0.15;
const SEED = 20_261_125;
const MOST_SPOTS = 100;
const SPOT_SPACING_M = 1.8;
const SPOTS = 2;

/**
 * How sure lines are by the surfaces that agree with the evidence, without planning anew on them: each shot is only aimed
 * again, as `surveyDoubtSteps` aims its own. Empty where the ground was only assumed. Yields the share that is done.
 */
export function* sureLinesSteps(
  scene: Scene,
  asked: readonly { readonly flagId: string; readonly lines: readonly LineAsked[] }[],
): Generator<number, readonly SureLines[]> {
  const fitted = fitSurface(scene.input, { flatWithoutEvidence: true, cellM: GRID_APART_M });
  if (fitted.plate === null || asked.length === 0) return [];
  const surfaces = surfaceEnsemble(fitted, SURVEY_SURFACES, generator(SEED), scene.surface);
  const members = surfaces.map((surface) =>
    sceneOn(scene, { input: scene.input, surface, ground: surveyedGround(surface, scene.input) }),
  );
  const told: SureLines[] = [];
  for (const { flagId, lines } of asked) {
    const flag = scene.flags.find(({ record }) => record.id === flagId);
    if (flag === undefined) continue;
    const aimed = aimedOn(scene, flag, lines);
    const errors = aimed.map((): number[] => []);
    for (const [i, member] of members.entries()) {
      const there = aimedOn(member, flag, lines, aimed);
      there.forEach((bearing, k) => {
        const ball = ballOf(scene, lines[k]);
        const first = aimed[k] ?? null;
        if (bearing !== null && first !== null && ball !== undefined)
          errors[k]?.push((bearing.bearing - first.bearing) * between(ball, flag));
      });
      yield (told.length + (i + 1) / members.length) / asked.length;
    }
    const known = lines.flatMap(({ ballId, option }, k) => {
      const own = errors[k] ?? [];
      return own.length === 0 ? [] : [{ ballId, optionId: option.id, aimSdM: rootMeanSquare(own) }];
    });
    const unsure = known.filter(({ aimSdM }) => aimSdM >= UNSURE_AIM_M);
    const atStake = unsure.flatMap(({ ballId }) =>
      stakeOf(
        scene,
        flag,
        lines.find((line) => line.ballId === ballId),
      ),
    );
    told.push({
      flagId,
      lines: known,
      measureNext: atStake.length === 0 ? [] : measureNext(fitted, atStake, spotsOn(scene), { count: SPOTS }),
    });
  }
  return told;
}

type Aimed = ReturnType<typeof solveAim> | null;

const ballOf = ({ balls }: Scene, line: LineAsked | undefined): SceneBall | undefined =>
  balls.find(({ record }) => record.id === line?.ballId);

/** The line of each shot on this ground; null for a way out, and for what the player no longer has. */
function aimedOn(
  scene: Scene,
  flag: SceneFlag,
  lines: readonly LineAsked[],
  near: readonly Aimed[] = [],
): Aimed[] {
  const tools = flagShooters(scene, flag.at);
  return lines.map((line, k) => {
    const ball = ballOf(scene, line);
    if (ball === undefined || line.option.playAway) return null;
    const { candidates } = availability(
      scene.player,
      coverOf(scene, ball),
      ball.record.lie,
      between(ball, flag),
    );
    const candidate = candidates.find(
      ({ technique, club }) => technique === line.option.technique && club.id === line.option.clubId,
    );
    if (candidate === undefined) return null;
    const shooter = shooterOn(scene, candidate, ball, flag, tools);
    return solveAim(
      shooter,
      ball.at,
      shifted(ball.at, flag.at, FIRST_PAST_M, 0),
      'rest',
      near[k] ?? undefined,
    );
  });
}

/** What the break of a shot hangs on: the putt, or the roll from its landing spot. */
function stakeOf(scene: Scene, flag: SceneFlag, line: LineAsked | undefined): AtStake[] {
  const ball = ballOf(scene, line);
  if (ball === undefined || line === undefined) return [];
  const from = line.option.landing ?? ball.at;
  const at = { eastM: (from.eastM + flag.at.eastM) / 2, northM: (from.northM + flag.at.northM) / 2 };
  return [{ terms: breakTerms(from, flag.at, rollingFromStimp(scene.conditions.stimpFt), 0), at, weight: 1 }];
}

function spotsOn({ green: { polygon } }: Scene): ReturnType<typeof placesOver> {
  for (let spacing = SPOT_SPACING_M; ; spacing *= 1.15) {
    const spots = placesOver(polygon, spacing);
    if (spots.length <= MOST_SPOTS) return spots;
  }
}
