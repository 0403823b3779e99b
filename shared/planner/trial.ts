import { exp, log } from '../numeric/elementary.ts';
import { type Aim, type Solved } from './solveAim.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import type { StrokesField } from './strokesField.ts';

/** What the first rows of a table of standard shots have cost. */
export interface Tally {
  readonly shots: number;
  /** Strokes of those that were not lost. */
  readonly sum: number;
  readonly lost: number;
  /** Of each shot; NaN for one that was lost. */
  readonly each: Float64Array;
}

export const NOTHING: Tally = { shots: 0, sum: 0, lost: 0, each: new Float64Array(0) };

/** Shoots the next rows up to row `until` and adds them to a tally of the same aim. */
export function shoot(
  shooter: Shooter,
  field: StrokesField,
  aim: Aim,
  shots: Float64Array,
  begun: Tally,
  until: number,
): Tally {
  let { sum, lost } = begun;
  const each = new Float64Array(until);
  each.set(begun.each);
  for (let i = begun.shots; i < until; i += 1) {
    shooter.struck(aim.clubheadMps, aim.bearing, shots, i);
    const code = shooter.out[CODE] ?? 0;
    const strokes = isLost(code) ? NaN : strokesOf(shooter, field, code);
    each[i] = strokes;
    if (isLost(code)) lost += 1;
    else sum += strokes;
  }
  return { shots: until, sum, lost, each };
}

export const mean = ({ sum, shots, lost }: Tally): number => withReplays(sum, shots, lost);

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

/** Where trials of an aim are shot. */
export interface Trials {
  readonly shooter: Shooter;
  readonly field: StrokesField;
  readonly solved: Solved;
  readonly distanceM: number;
  readonly shots: Float64Array;
}

export function aimAt({ solved, distanceM }: Trials, beyondM: number, rightM: number): Aim {
  return {
    clubheadMps: solved.clubheadMps * exp(log(Math.max(0.2, 1 + beyondM / distanceM)) / solved.touch),
    bearing: solved.bearing + rightM / distanceM,
  };
}

/** Steps of the walk, metres along and aside; a putt is told apart on a finer scale than a shot through the air. */
export function stepsOf({ shooter, distanceM }: Trials): {
  readonly alongM: number;
  readonly asideM: number;
} {
  const scale = shooter.strike.clubKind === 'putter' ? 0.5 : 1;
  return { alongM: scale * (0.4 + 0.06 * distanceM), asideM: scale * (0.3 + 0.04 * distanceM) };
}

/**
 * Moves an aim that stops at the flag towards the one of fewest expected strokes: past the hole, short of it or away
 * from trouble. Wide steps in metres beyond and to the right over the first `count` shots, every trial with the same
 * luck; one that is behind after half of its shots is not shot to the end. `begun` is a look at the aim as solved.
 */
export function walkAim(trials: Trials, count: number, begun?: Improved): Improved {
  const { shooter, field, shots } = trials;
  const half = count >> 1;
  let beyondM = 0;
  let rightM = 0;
  let aim = aimAt(trials, beyondM, rightM);
  const known = begun !== undefined && begun.tally.shots <= half ? begun.tally : NOTHING;
  let atHalf = shoot(shooter, field, aim, shots, known, half);
  let tally = begun?.tally.shots === count ? begun.tally : shoot(shooter, field, aim, shots, atHalf, count);
  // One shot more in the hole is no reason to aim away from it: a step aside must be worth a stroke in the sample.
  const walk = (stepBeyond: number, stepRight: number, most: number): void => {
    const leastGain = stepRight === 0 ? 1e-9 : 1 / count;
    for (const sign of [1, -1]) {
      let moves = 0;
      while (moves < most) {
        const b = beyondM + sign * stepBeyond;
        const r = rightM + sign * stepRight;
        const next = aimAt(trials, b, r);
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
  const { alongM, asideM } = stepsOf(trials);
  walk(alongM, 0, 4);
  walk(0, asideM, 3);
  return { aim, strokes: mean(tally), beyondM, rightM, tally };
}

/** The same aim with more shots behind it. */
export function withMoreShots(
  trials: Pick<Trials, 'shooter' | 'field' | 'shots'>,
  count: number,
  begun: Improved,
): Improved {
  const tally = shoot(trials.shooter, trials.field, begun.aim, trials.shots, begun.tally, count);
  return { ...begun, strokes: mean(tally), tally };
}
