import type { Aim } from './solveAim.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import type { StrokesField } from './strokesField.ts';

/** What the first rows of a table of standard shots have cost. */
export interface Tally {
  readonly shots: number;
  /** Strokes of those that were not lost. */
  readonly sum: number;
  readonly lost: number;
}

export const NOTHING: Tally = { shots: 0, sum: 0, lost: 0 };

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
  for (let i = begun.shots; i < until; i += 1) {
    shooter.struck(aim.clubheadMps, aim.bearing, shots, i);
    const code = shooter.out[CODE] ?? 0;
    if (isLost(code)) lost += 1;
    else sum += strokesOf(shooter, field, code);
  }
  return { shots: until, sum, lost };
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
