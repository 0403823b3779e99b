import type { StrikeSpread } from '../player/strikeSpread.ts';
import type { Shooter } from './shooter.ts';
import type { Aim } from './solveAim.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';

/**
 * Draws of speed, line and loft of four strikes met as intended; their mirror images are four more. Each column holds the
 * medians of eight equal parts of the normal distribution, scaled to its variance, and each two columns are put together so
 * that they are as good as uncorrelated (a test holds it).
 */
export const CLEAN_DRAWS = [
  [1.663, 0.531, -0.962],
  [0.531, 0.962, 1.663],
  [0.962, -1.663, 0.531],
  [0.17, 0.17, -0.17],
] as const;
const AS_MEANT = [0, 0, 0] as const;
const HEAVY_ROW = 4;
const THIN_ROW = 5;
const mirrored = (row: (typeof CLEAN_DRAWS)[number]): readonly number[] => row.map((draw) => -draw);
const [a, b, c, d] = CLEAN_DRAWS;
const ROWS = [a, mirrored(a), b, mirrored(b), AS_MEANT, AS_MEANT, c, mirrored(c), d, mirrored(d)];

/** How many strikes tell a bad option from a good one, and how many there are. */
export const FIRST_STRIKES = 6;
export const ALL_STRIKES = ROWS.length;

/** A table for `Shooter.struck`, its contacts by what each row is. */
function drawsFor({ heavyShare, thinShare }: StrikeSpread): Float64Array {
  const draws = new Float64Array(ALL_STRIKES * DRAWS_PER_SHOT);
  for (const [row, values] of ROWS.entries()) {
    draws.set(values, row * DRAWS_PER_SHOT);
    draws[row * DRAWS_PER_SHOT + 3] =
      row === HEAVY_ROW
        ? heavyShare / 2
        : row === THIN_ROW
          ? 1 - thinShare / 2
          : (heavyShare + 1 - thinShare) / 2;
  }
  return draws;
}

/**
 * The mean of what a player's strikes cost, by few of them: eight met as intended, a heavy and a thin one, each kind weighed
 * by how often it happens. Chance would put none or two of the bad ones among as many.
 * @param cost of the strike just made
 * @returns what the first so many strikes say; it goes on from those made before
 */
export function fewStrikes(shooter: Shooter, aim: Aim, cost: () => number): (until: number) => number {
  const { heavyShare, thinShare } = shooter.spread;
  const draws = drawsFor(shooter.spread);
  let strikes = 0;
  let clean = 0;
  let cleanSum = 0;
  let badSum = 0;
  return (until) => {
    for (; strikes < until; strikes += 1) {
      const bad = strikes === HEAVY_ROW ? heavyShare : strikes === THIN_ROW ? thinShare : null;
      if (bad === 0) continue;
      shooter.struck(aim.clubheadMps, aim.bearing, draws, strikes);
      if (bad !== null) badSum += bad * cost();
      else {
        clean += 1;
        cleanSum += cost();
      }
    }
    return (1 - heavyShare - thinShare) * (cleanSum / clean) + badSum;
  };
}
