import type { PlayerLevel } from '../atlas/records.ts';
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
 * Fitted to tour make percentages and expected putts on a level green at stimp 10 (computed): line 1.29 deg growing by
 * 0.40 deg per 100 ft, speed 4.6 %, 1.1 ft past. The line error includes misreading the green. `distanceM` is the length
 * of the putt.
 */
export function puttingSpread(level: PlayerLevel, distanceM: number): PuttingSpread {
  const factor = skillOf(level).putting;
  return {
    lineSdDeg: factor * (1.29 + (0.4 * distanceM) / 30.48),
    speedSd: factor * 0.046,
    pastM: 0.335,
  };
}
