import type { Shooter } from './shooter.ts';
import type { Aim, Solved } from './solveAim.ts';
import type { StrokesField } from './strokesField.ts';
import { mean, NOTHING, shoot } from './trial.ts';

const SHARES = [1, 0.8, 0.6, 0.4, 0.25] as const;
const TURNS = [0, -0.15, 0.15, -0.35, 0.35] as const;
const SHOTS = 16;
/** A try this far behind after the first shots is given up. */
const FIRST_SHOTS = 6;
const HOPELESS_STROKES = 0.5;

/**
 * Where no size brings the perfect strike to the flag: the best by expected strokes of a few sizes, up to the
 * full swing, in a few directions about the line, and of what the search for the flag had found.
 */
export function wayOut(
  shooter: Shooter,
  field: StrokesField,
  solved: Solved,
  bearing: number,
  shots: Float64Array,
): Solved {
  let best: Aim = solved;
  let least = mean(shoot(shooter, field, solved, shots, NOTHING, SHOTS));
  for (const share of SHARES) {
    for (const turn of TURNS) {
      const aim: Aim = { clubheadMps: share * shooter.fastestMps, bearing: bearing + turn };
      const begun = shoot(shooter, field, aim, shots, NOTHING, FIRST_SHOTS);
      if (mean(begun) > least + HOPELESS_STROKES) continue;
      const strokes = mean(shoot(shooter, field, aim, shots, begun, SHOTS));
      if (strokes < least) {
        least = strokes;
        best = aim;
      }
    }
  }
  return { ...solved, ...best };
}
