import { exp } from '../numeric/elementary.ts';
import { CODE, isLost, lineSdOf, type Shooter } from './shooter.ts';
import type { Aim } from './solveAim.ts';
import type { StrokesField } from './strokesField.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';
import { strokesOf, withReplays } from './trial.ts';

/**
 * The shots of one option so far, whatever they were aimed at, and what they say of any aim near those. A strike is as likely
 * under one aim as another with its speed and line moved, so that every shot counts for every aim by a weight: its density
 * under that aim over its density under all aims shot at together (the balance heuristic of Veach & Guibas 1995; from
 * memory); means are divided by the sum of weights. Good to about a spread of the player's from where shots were aimed.
 */
export interface StrikeCloud {
  /** Shoots rows `from` to `until` of a table at an aim, with speed and line spread `width` times as wide as the player's. */
  shoot(aim: Aim, shots: Float64Array, from: number, until: number, width: number): void;
  /** Strokes expected of an aim. */
  at(aim: Aim): number;
  /** How many standard errors of their difference one aim costs more than another. */
  dearerInErrors(aim: Aim, other: Aim): number;
}

/** An empty cloud with room for so many shots. */
export function strikeCloud(shooter: Shooter, field: StrokesField, most: number): StrikeCloud {
  const { speedSd } = shooter.spread;
  const lineSd = lineSdOf(shooter.spread, shooter.strike.handed);
  const speeds = new Float64Array(most);
  const lines = new Float64Array(most);
  const strokes = new Float64Array(most);
  /** Density of each shot under all aims shot at, but for a constant. */
  const densities = new Float64Array(most);
  const [first, second] = [new Float64Array(most), new Float64Array(most)];
  const batches: { readonly aim: Aim; readonly shots: number; readonly width: number }[] = [];
  let count = 0;

  const density = ({ clubheadMps, bearing }: Aim, width: number, shot: number): number => {
    const fast = ((speeds[shot] ?? 0) / clubheadMps - 1) / (width * speedSd);
    const right = ((lines[shot] ?? 0) - bearing) / (width * lineSd);
    return exp(-0.5 * (fast * fast + right * right)) / (width * width * clubheadMps);
  };
  const weigh = (aim: Aim, into: Float64Array): Float64Array => {
    for (let i = 0; i < count; i += 1) into[i] = density(aim, 1, i) / (densities[i] ?? 1);
    return into;
  };
  const meanBy = (weights: Float64Array): number => {
    let sum = 0;
    let kept = 0;
    let all = 0;
    for (let i = 0; i < count; i += 1) {
      const weight = weights[i] ?? 0;
      const cost = strokes[i] ?? NaN;
      all += weight;
      if (cost === cost) {
        kept += weight;
        sum += weight * cost;
      }
    }
    return withReplays(sum, all, all - kept);
  };
  return {
    shoot(aim, shots, from, until, width) {
      const begun = count;
      for (let row = from; row < until; row += 1) {
        const at = row * DRAWS_PER_SHOT;
        shooter.struck(aim.clubheadMps, aim.bearing, shots, row, width);
        const code = shooter.out[CODE] ?? 0;
        speeds[count] = aim.clubheadMps * Math.max(0.1, 1 + speedSd * width * (shots[at] ?? 0));
        lines[count] = aim.bearing + lineSd * width * (shots[at + 1] ?? 0);
        strokes[count] = isLost(code) ? NaN : strokesOf(shooter, field, code);
        count += 1;
      }
      for (const batch of batches)
        for (let i = begun; i < count; i += 1)
          densities[i] = (densities[i] ?? 0) + batch.shots * density(batch.aim, batch.width, i);
      for (let i = 0; i < count; i += 1)
        densities[i] = (densities[i] ?? 0) + (until - from) * density(aim, width, i);
      batches.push({ aim, shots: until - from, width });
    },
    at: (aim) => meanBy(weigh(aim, first)),
    dearerInErrors(aim, other) {
      const a = weigh(aim, first);
      const b = weigh(other, second);
      const [meanA, meanB] = [meanBy(a), meanBy(b)];
      let [sumA, sumB] = [0, 0];
      for (let i = 0; i < count; i += 1) {
        sumA += a[i] ?? 0;
        sumB += b[i] ?? 0;
      }
      let squares = 0;
      for (let i = 0; i < count; i += 1) {
        const cost = strokes[i] ?? NaN;
        const ofA = ((a[i] ?? 0) / sumA) * ((cost === cost ? cost : 2 + meanA) - meanA);
        const ofB = ((b[i] ?? 0) / sumB) * ((cost === cost ? cost : 2 + meanB) - meanB);
        squares += (ofA - ofB) * (ofA - ofB);
      }
      return (meanA - meanB) / Math.sqrt(squares);
    },
  };
}
