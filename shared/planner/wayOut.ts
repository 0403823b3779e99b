import type { Shooter } from './shooter.ts';
import type { Aim, Solved } from './solveAim.ts';
import type { StrokesField } from './strokesField.ts';
import { meanStrokes } from './trial.ts';

const SHARES = [1, 0.8, 0.6, 0.4, 0.25] as const;
const TURNS = [0, -0.15, 0.15, -0.35, 0.35] as const;
const SHOTS = 16;

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
  let least = meanStrokes(shooter, field, solved, shots, SHOTS);
  for (const share of SHARES) {
    for (const turn of TURNS) {
      const aim: Aim = { clubheadMps: share * shooter.fastestMps, bearing: bearing + turn };
      const strokes = meanStrokes(shooter, field, aim, shots, SHOTS);
      if (strokes < least) {
        least = strokes;
        best = aim;
      }
    }
  }
  return { ...solved, ...best };
}
