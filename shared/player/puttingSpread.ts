import type { PlayerLevel } from '../atlas/records.ts';
import type { Cover } from '../words/vocabulary.ts';
import { misreadErrors, type PuttAhead } from './misread.ts';
import { skillOf } from './skill.ts';

/** Error of a putt: normal in start line and in ball speed. */
export interface PuttingSpread {
  readonly lineSdDeg: number;
  /** Standard deviation of ball speed as a share of it. */
  readonly speedSd: number;
}

/** Where a putter's errors come from: the stroke, and what was read of the ground. Standard deviations. */
export interface PuttingErrors {
  readonly strokeLineDeg: number;
  /** Of ball speed, as a share of it. */
  readonly strokeSpeed: number;
  /** Slope read wrong along the line and across it, rise over run. */
  readonly readAlong: number;
  readonly readAcross: number;
  /** The green's pace read wrong, as a share of its deceleration. */
  readonly readPace: number;
}

/** Distance past the hole that the intended pace would carry, metres; fitted with the errors of a tour player. */
export const PUTT_PAST_M = 0.46;

/**
 * Fitted by tests/published/fit/putting.ts to tour one-putts, expected putts and three-putts on a level green at stimp
 * 10. Those cannot part stroke from reading. The stroke's line is held at 0.9 degrees: a stroke of 0.6 (elite 0.4 to
 * 0.6; from memory), a putter aimed within 0.6 (assumed), grass that turns the ball by 0.28 (found). Of the variance of
 * pace 60 % is reading, as Karlsen & Nilsson (2008; found) saw. What line is left to explain grows with length as a
 * slope of 0.44 % read wrong makes it grow, with no constant of its own; the same misread is taken along the line, and
 * the green's pace makes up what reading is still due.
 */
const TOUR: PuttingErrors = {
  strokeLineDeg: 0.9,
  strokeSpeed: 0.0281,
  readAlong: 0.00443,
  readAcross: 0.00443,
  readPace: 0.04,
};

export function puttingErrors(level: PlayerLevel): PuttingErrors {
  const { line, pace, read } = skillOf(level).putting;
  return {
    strokeLineDeg: line * TOUR.strokeLineDeg,
    strokeSpeed: pace * TOUR.strokeSpeed,
    readAlong: pace * TOUR.readAlong,
    readAcross: read * TOUR.readAcross,
    readPace: pace * TOUR.readPace,
  };
}

/** Spread of a putt as it is meant, on the ground it is meant for: see `misreadErrors`. */
export function puttingSpread(errors: PuttingErrors, putt: PuttAhead): PuttingSpread {
  const misread = misreadErrors(putt, {
    alongSd: errors.readAlong,
    acrossSd: errors.readAcross,
    paceSd: errors.readPace,
  });
  const aimDeg = (misread.aimRad * 180) / Math.PI;
  return {
    lineSdDeg: Math.sqrt(errors.strokeLineDeg * errors.strokeLineDeg + aimDeg * aimDeg),
    speedSd: Math.sqrt(errors.strokeSpeed * errors.strokeSpeed + misread.speedSd * misread.speedSd),
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
