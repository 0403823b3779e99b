import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import { noteAnythingStands } from '../terrain/groundReads.ts';
import { type Cover, coverCode } from '../words/vocabulary.ts';
import { MET_LIP, MET_OBSTACLE, slots } from '../ball/slots.ts';
import { CODE, isLost, type Shooter } from './shooter.ts';
import { withTrouble } from './safeWay.ts';
import type { Situation } from './situation.ts';
import { type Solved, solveAim } from './solveAim.ts';
import type { StrokesField } from './strokesField.ts';
import { strokesOf, withReplays } from './trial.ts';

export interface SafeShot {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly aim: Solved;
}

const SHOTS = 24;
/** A place that far behind after the first shots is given up. */
const FIRST_SHOTS = 8;
const HOPELESS = 0.5;
/** Directions from the line to the flag, radians, and lengths as shares of the distance, that are tried. */
const TURNS = [0, -0.35, 0.35, -0.8, 0.8] as const;
const TURNS_IN_TROUBLE = [0, -0.5, 0.5, -1.2, 1.2, -2.2, 2.2] as const;
const LENGTHS = [0.65, 1, 1.4] as const;
/** Out of sand or deep grass a few paces to somewhere better will do, metres. */
const LENGTHS_OUT_M = [7, 12] as const;
const BUNKER = coverCode('bunker');
const HEAVY = coverCode('heavyRough');

/**
 * The safe way out: of a fan of places to stop, and the easiest clubs for it, the one with the least chance of
 * trouble, with expected strokes to settle what is about equal. Where no place in the fan can be reached
 * cleanly, the best of the strikes that were tried. Null only without any candidate.
 */
export function playAway(situation: Situation, candidates: readonly Candidate[]): SafeShot | null {
  const { tools, ball, bearing, cover, quality, distanceM, searchShots } = situation;
  const inTrouble = UNSAFE.has(cover);
  const turns = inTrouble ? TURNS_IN_TROUBLE : TURNS;
  const reaches = [
    ...LENGTHS.map((length) => Math.max(3, distanceM * length)),
    ...(inTrouble ? LENGTHS_OUT_M : []),
  ];
  let best: SafeShot | null = null;
  let least = Infinity;
  for (const strict of [true, false]) {
    if (best !== null) break;
    for (const candidate of easiest(candidates, anythingStands(situation))) {
      for (const turn of turns) {
        for (const reach of reaches) {
          const target: PlanePoint = {
            eastM: ball.eastM + reach * sin(bearing + turn),
            northM: ball.northM + reach * cos(bearing + turn),
          };
          if (strict && UNSAFE.has(situation.scene.ground.coverAt(target))) continue;
          const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing + turn);
          const aim = solveAim(shooter, ball, target, 'rest');
          if (strict && aim.missM > 1 + 0.25 * reach) continue;
          const score = carefulScore(shooter, tools.field, aim, searchShots, least);
          if (score < least) {
            least = score;
            best = { candidate, shooter, aim };
          }
        }
      }
    }
  }
  return best;
}

function anythingStands({ scene: { ground } }: Situation): boolean {
  noteAnythingStands(ground.reads);
  return ground.obstacles.length > 0;
}

const UNSAFE: ReadonlySet<Cover> = new Set(['bunker', 'penaltyArea', 'outOfBounds', 'heavyRough']);

/** Expected strokes with every share of trouble counted dear. */
function carefulScore(
  shooter: Shooter,
  field: StrokesField,
  aim: Solved,
  shots: Float64Array,
  least: number,
): number {
  let sum = 0;
  let lost = 0;
  let trouble = 0;
  const score = (count: number): number => withTrouble(withReplays(sum, count, lost), trouble / count);
  for (let i = 0; i < SHOTS; i += 1) {
    if (i === FIRST_SHOTS && score(i) > least + HOPELESS) return score(i);
    shooter.struck(aim.clubheadMps, aim.bearing, shots, i);
    const code = shooter.out[CODE] ?? 0;
    if (isLost(code)) lost += 1;
    else sum += strokesOf(shooter, field, code);
    const met = shooter.out[slots.obstructed];
    if (isLost(code) || code === BUNKER || code === HEAVY || met === MET_OBSTACLE || met === MET_LIP)
      trouble += 1;
  }
  return score(SHOTS);
}

/** At most three candidates with the least that can go wrong; where trees or walls stand, one that stays low. */
function easiest(candidates: readonly Candidate[], stayLow: boolean): readonly Candidate[] {
  const order = stayLow
    ? (['putt', 'bumpAndRun', ...LOFTED] as const)
    : (['putt', ...LOFTED, 'bumpAndRun'] as const);
  const picks: Candidate[] = [];
  for (const technique of order) {
    const clubs = candidates.filter((candidate) => candidate.technique === technique);
    const pick = clubs[clubs.length - 1];
    if (pick !== undefined && picks.length < 3) picks.push(pick);
  }
  return picks;
}

const LOFTED = ['chip', 'pitch', 'splash', 'explosion', 'highSoft'] as const;
