import type { PlayerLevel } from '../atlas/records.ts';
import { shotSimulator, type ShotSimulator } from '../ball/simulator.ts';
import type { Ground } from '../ball/ground.ts';
import { type Conditions, type Lie, outcomes, type Strike } from '../ball/shot.ts';
import { SLOT_COUNT, slots } from '../ball/slots.ts';
import { strikeSolver } from '../ball/strikeVectors.ts';
import type { PlanePoint } from '../geometry/points.ts';
import type { Candidate } from '../player/availability.ts';
import { acrossGrass, PUTT_PAST_M, puttingErrors, puttingSpread } from '../player/puttingSpread.ts';
import { meetsBallFirst, type StrikeSpread, strikeSpread } from '../player/strikeSpread.ts';
import { techniqueRules } from '../player/technique.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { GroundBetween } from './groundBetween.ts';
import { SLOPE_PULL_MPS2 } from '../ball/constants.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';

/** Finish codes beside the covers' own. */
export const CODE_HOLED = 254;
export const CODE_LOST = 255;

/** Where `Shooter.out` keeps the finish code; the slots before it are those of the ball model. */
export const CODE = SLOT_COUNT;
export const REST_EAST = slots.restEastM;
export const REST_NORTH = slots.restNorthM;
export const LAND_EAST = slots.landingEastM;
export const LAND_NORTH = slots.landingNorthM;

const HOLED = outcomes.indexOf('holed');
const STILL_ROLLING = outcomes.indexOf('stillRolling');
const PENALTY = coverCode('penaltyArea');
const OUT = coverCode('outOfBounds');

/** A ball that has to be replayed: in a penalty area, out of bounds, or never seen at rest. */
export function isLost(code: number): boolean {
  return code === PENALTY || code === OUT || code === CODE_LOST;
}

/**
 * One technique with one club from one place: shoots, and leaves what happened in `out`. Allocates nothing per
 * shot.
 */
export interface Shooter {
  readonly out: Float64Array;
  readonly strike: Strike;
  readonly lie: Lie;
  /** The day as it is under the ball. */
  readonly conditions: Conditions;
  readonly spread: StrikeSpread;
  readonly fastestMps: number;
  /** The strike intended, with the hole covered. */
  perfect(clubheadMps: number, bearing: number): void;
  /**
   * A strike with the player's spread, by row `row` of a table of standard shots, at the real hole; its speed and line
   * spread `width` times as wide (1 unless said).
   */
  struck(clubheadMps: number, bearing: number, shots: Float64Array, row: number, width?: number): void;
  /** Clubhead speed to start a search from, for a shot of this length. */
  guessMps(distanceM: number): number;
}

/** The two simulators of a flag: with its hole, and with the hole covered. */
export interface Simulators {
  readonly holed: ShotSimulator;
  readonly covered: ShotSimulator;
}

export function simulatorsAt(ground: Ground, conditions: Conditions, flag: PlanePoint): Simulators {
  return { holed: shotSimulator(ground, conditions, flag), covered: shotSimulator(ground, conditions, null) };
}

export interface ShooterInput {
  readonly simulators: Simulators;
  readonly conditions: Conditions;
  readonly handed: 'right' | 'left';
  readonly candidate: Candidate;
  readonly from: PlanePoint;
  readonly lie: Lie;
  readonly spread: StrikeSpread;
  /** The player's full swing with a short iron, m/s. */
  readonly fastestMps: number;
}

/**
 * Spread of a candidate from a lie. A putt's goes by the ground between ball and flag: how it falls, and how uneven
 * what it crosses off the green is.
 */
export function spreadOf(
  candidate: Candidate,
  level: PlayerLevel,
  lie: Lie,
  moisture: Conditions['moisture'],
  distanceM: number,
  between: () => GroundBetween,
): StrikeSpread {
  const { technique } = candidate;
  if (technique !== 'putt')
    return strikeSpread(level, technique, lie.cover, lie.quality, moisture, distanceM);
  const { rollingMps2, climbM, energyShares } = between();
  const lengthM = Math.max(0.05, distanceM);
  const brake = Math.max(0.25 * rollingMps2, rollingMps2 + (SLOPE_PULL_MPS2 * climbM) / lengthM);
  const { speedSd, lineSdDeg } = puttingSpread(puttingErrors(level), {
    distanceM: lengthM,
    startMps: Math.sqrt(2 * brake * (lengthM + PUTT_PAST_M)),
    holeMps: Math.sqrt(2 * brake * PUTT_PAST_M),
    rollingMps2,
  });
  const rough = lie.cover === 'lightRough' || lie.cover === 'heavyRough';
  return {
    speedSd: acrossGrass(speedSd, energyShares),
    lineSdDeg: lineSdDeg * (rough ? 1.3 : 1),
    loftSdDeg: 0,
    heavyShare: 0,
    thinShare: 0,
  };
}

export function strikeOf(candidate: Candidate, handed: 'right' | 'left'): Strike {
  const rule = techniqueRules[candidate.technique];
  const { club } = candidate;
  return {
    clubKind: club.kind === 'putter' ? 'putter' : 'lofted',
    loftDeg: club.loftDeg,
    bounceDeg: club.bounceDeg,
    leanDeg: rule.leanDeg,
    attackDeg: rule.attackDeg,
    faceOpenDeg: rule.faceOpenDeg,
    ballFirst: meetsBallFirst(candidate.technique),
    clubheadMps: 0,
    bearingDeg: 0,
    handed,
  };
}

/** Standard deviation of the start line, radians, by the hand that plays: draws of a left-hander are mirrored. */
export const lineSdOf = ({ lineSdDeg }: StrikeSpread, handed: 'right' | 'left'): number =>
  ((handed === 'left' ? -1 : 1) * lineSdDeg * Math.PI) / 180;

export function shooter(input: ShooterInput): Shooter {
  const { simulators, from } = input;
  const strike = strikeOf(input.candidate, input.handed);
  const { spread } = input;
  const solver = strikeSolver(strike, input.lie, input.conditions);
  const launch = new Float64Array(6);
  const out = new Float64Array(SLOT_COUNT + 1);
  const lineSd = lineSdOf(spread, input.handed);
  const thinFrom = 1 - spread.thinShare;
  const putter = strike.clubKind === 'putter';

  const close = (outcome: number): void => {
    out[CODE] =
      outcome === HOLED ? CODE_HOLED : outcome === STILL_ROLLING ? CODE_LOST : (out[slots.restCover] ?? 0);
  };
  return {
    out,
    strike,
    lie: input.lie,
    conditions: input.conditions,
    fastestMps: input.fastestMps,
    spread,
    perfect(clubheadMps, bearing) {
      solver.vectors(clubheadMps, bearing, 0, 0, 0, launch);
      close(simulators.covered.run(from.eastM, from.northM, launch, out));
    },
    struck(clubheadMps, bearing, shots, row, width = 1) {
      const at = row * DRAWS_PER_SHOT;
      const u = shots[at + 3] ?? 0.5;
      let contact = 0;
      if (u < spread.heavyShare) contact = -1 + 0.75 * (u / spread.heavyShare);
      else if (u > thinFrom) contact = 0.25 + 0.75 * ((u - thinFrom) / spread.thinShare);
      solver.vectors(
        clubheadMps * Math.max(0.1, 1 + width * spread.speedSd * (shots[at] ?? 0)),
        bearing + width * lineSd * (shots[at + 1] ?? 0),
        0,
        spread.loftSdDeg * (shots[at + 2] ?? 0),
        contact,
        launch,
      );
      close(simulators.holed.run(from.eastM, from.northM, launch, out));
    },
    // Rough and unit-free of the ground: the search corrects it in a step or two.
    guessMps: (distanceM) => (putter ? 0.75 : 2.6) * Math.sqrt(distanceM + 0.3),
  };
}
