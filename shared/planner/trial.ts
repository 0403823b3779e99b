import { exp, log } from '../numeric/elementary.ts';
import { type Aim, type Solved } from './solveAim.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';
import type { StrokesField } from './strokesField.ts';

/** What the first rows of a table of standard shots have cost. */
export interface Tally {
  readonly shots: number;
  /** Strokes of those that were not lost. */
  readonly sum: number;
  readonly lost: number;
}

const NOTHING: Tally = { shots: 0, sum: 0, lost: 0 };

/** Shoots the next rows up to row `until` and adds them to a tally of the same aim. */
function shoot(
  shooter: Shooter,
  field: StrokesField,
  aim: Aim,
  shots: Float64Array,
  begun: Tally,
  until: number,
): Tally {
  let { sum, lost } = begun;
  for (let i = begun.shots; i < until; i += 1) {
    shooter.struck(aim.clubheadMps, aim.bearing, shots, i);
    const code = shooter.out[CODE] ?? 0;
    if (isLost(code)) lost += 1;
    else sum += strokesOf(shooter, field, code);
  }
  return { shots: until, sum, lost };
}

const mean = ({ sum, shots, lost }: Tally): number => withReplays(sum, shots, lost);

/** Mean strokes of an aim over the first `count` rows of a table of standard shots. */
export function meanStrokes(
  shooter: Shooter,
  field: StrokesField,
  aim: Aim,
  shots: Float64Array,
  count: number,
): number {
  return mean(shoot(shooter, field, aim, shots, NOTHING, count));
}

/** Strokes of one shot that is not lost, itself included. */
export function strokesOf(shooter: Shooter, field: StrokesField, code: number): number {
  return code === CODE_HOLED
    ? 1
    : 1 + field.at(shooter.out[REST_EAST] ?? 0, shooter.out[REST_NORTH] ?? 0, code);
}

/**
 * A ball in a penalty area or out of bounds is replayed from the same place with one penalty stroke: stroke and
 * distance, which the Rules always allow (Rules 17.1d(1) and 18.2b govern). With a share p of such shots, E =
 * mean of the others + p (2 + E), solved for E.
 */
export function withReplays(sumOfOthers: number, count: number, lost: number): number {
  const p = Math.min(lost / count, MOST_REPLAYS);
  const others = lost < count ? sumOfOthers / (count - lost) : NOTHING_KEPT;
  return others + (2 * p) / (1 - p);
}

/** Beyond this share the sum over replays is cut off: such an option is hopeless anyway. */
const MOST_REPLAYS = 0.85;
/** Strokes put for the others where every simulated shot was lost. */
const NOTHING_KEPT = 4;

export interface Improved {
  readonly aim: Aim;
  readonly strokes: number;
  /** How far the intended finish was moved from the first target, metres beyond and to the right. */
  readonly beyondM: number;
  readonly rightM: number;
  /** The shots of this aim so far. */
  readonly tally: Tally;
}

/** A first look that leaves the aim where it is. */
export function lookAt(
  shooter: Shooter,
  field: StrokesField,
  aim: Aim,
  shots: Float64Array,
  count: number,
): Improved {
  const tally = shoot(shooter, field, aim, shots, NOTHING, count);
  return { aim, strokes: mean(tally), beyondM: 0, rightM: 0, tally };
}

/**
 * Moves an aim that stops at the flag to the one of fewest expected strokes: past the hole, short of it or away
 * from trouble. A pattern search in metres beyond and to the right, every trial with the same luck, so that
 * what is left is a smooth function; one that is behind after half of its shots is not shot to the end. Without
 * `begun` a first look with wide steps and few shots; with it, smaller steps from there with more shots. Beyond
 * `hopelessStrokes` it is left where it is.
 */
export function improveAim(
  shooter: Shooter,
  field: StrokesField,
  solved: Solved,
  distanceM: number,
  shots: Float64Array,
  begun: Improved | null,
  hopelessStrokes = Infinity,
  mostShots = begun === null ? FIRST_SHOTS : Infinity,
): Improved {
  const count = Math.min(mostShots, shots.length / DRAWS_PER_SHOT);
  const shifted = (beyondM: number, rightM: number): Aim => ({
    clubheadMps: solved.clubheadMps * exp(log(Math.max(0.2, 1 + beyondM / distanceM)) / solved.touch),
    bearing: solved.bearing + rightM / distanceM,
  });
  const half = count >> 1;
  let beyondM = begun?.beyondM ?? 0;
  let rightM = begun?.rightM ?? 0;
  let aim = shifted(beyondM, rightM);
  const known = begun !== null && begun.tally.shots <= half ? begun.tally : NOTHING;
  let atHalf = shoot(shooter, field, aim, shots, known, half);
  let tally = shoot(shooter, field, aim, shots, atHalf, count);
  const result = (): Improved => ({ aim, strokes: mean(tally), beyondM, rightM, tally });
  if (mean(tally) > hopelessStrokes) return result();
  // One shot more in the hole is no reason to aim away from it: a step aside must be worth a stroke in the sample.
  const walk = (stepBeyond: number, stepRight: number, most: number): void => {
    const leastGain = stepRight === 0 ? 1e-9 : 1 / count;
    for (const sign of [1, -1]) {
      let moves = 0;
      while (moves < most) {
        const b = beyondM + sign * stepBeyond;
        const r = rightM + sign * stepRight;
        const next = shifted(b, r);
        const nextHalf = shoot(shooter, field, next, shots, NOTHING, half);
        if (mean(nextHalf) >= mean(atHalf)) break;
        const nextTally = shoot(shooter, field, next, shots, nextHalf, count);
        if (mean(nextTally) >= mean(tally) - leastGain) break;
        aim = next;
        atHalf = nextHalf;
        tally = nextTally;
        beyondM = b;
        rightM = r;
        moves += 1;
      }
      if (moves > 0) return;
    }
  };
  // A putt is told apart on a finer scale than a shot through the air.
  const scale = shooter.strike.clubKind === 'putter' ? 0.5 : 1;
  const along = scale * (0.4 + 0.06 * distanceM);
  const aside = scale * (0.3 + 0.04 * distanceM);
  if (begun === null) {
    walk(along, 0, 4);
    walk(0, aside, 3);
  } else {
    walk(along / 2, 0, 2);
    walk(0, aside / 2, 2);
    walk(along / 4, 0, 1);
  }
  return result();
}

const FIRST_SHOTS = 32;
