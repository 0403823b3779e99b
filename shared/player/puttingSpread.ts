import type { PlayerLevel } from '../atlas/records.ts';
import type { Cover } from '../words/vocabulary.ts';
import { skillOf } from './skill.ts';

/** Error of a putt: normal in start line and in ball speed, and how far past the hole it is meant to die. */
export interface PuttingSpread {
  readonly lineSdDeg: number;
  /** Standard deviation of ball speed as a share of it. */
  readonly speedSd: number;
  /** Distance past the hole on level ground that the intended pace would carry, metres. */
  readonly pastM: number;
}

/**
 * Speed 4.6 % and 1.1 ft past: fitted to tour make percentages and expected putts on a level green at stimp 10
 * (computed). The line, 1.27 deg growing by 0.97 deg per 100 ft, is fitted to the make percentages with our own
 * capture by tests/published/fit/putting.ts. It includes misreading the green. `distanceM` is the length of the
 * putt.
 */
export function puttingSpread(level: PlayerLevel, distanceM: number): PuttingSpread {
  const factor = skillOf(level).putting;
  return {
    lineSdDeg: factor * (1.273 + (0.97 * distanceM) / 30.48),
    speedSd: factor * 0.046,
    pastM: 0.335,
  };
}

/**
 * How unevenly grass takes pace: standard deviation of what it takes, as a share. Assumed; green roughness is
 * in the fit.
 */
const UNEVEN: Readonly<Record<Cover, number>> = {
  green: 0,
  fringe: 0.2,
  approach: 0.25,
  fairway: 0.3,
  tee: 0.3,
  lightRough: 0.5,
  heavyRough: 0.7,
  bare: 0.3,
  bunker: 0.6,
  path: 0.3,
  penaltyArea: 0.8,
  outOfBounds: 0.5,
};

/**
 * Spread in speed of a putt that crosses other ground first: `energyShares` says what share of the ball's
 * energy each cover takes. What a cover takes is uncertain, and half of an error in energy is an error in
 * speed.
 */
export function acrossGrass(speedSd: number, energyShares: ReadonlyMap<Cover, number>): number {
  let squares = speedSd * speedSd;
  for (const [cover, share] of energyShares) {
    const part = 0.5 * UNEVEN[cover] * share;
    squares += part * part;
  }
  return Math.sqrt(squares);
}
