import type { PlayerLevel } from '../atlas/records.ts';
import { shotSimulator, type ShotSimulator } from '../ball/simulator.ts';
import type { Ground } from '../ball/ground.ts';
import { type Conditions, type Lie, outcomes, type Strike } from '../ball/shot.ts';
import { SLOT_COUNT, slots } from '../ball/slots.ts';
import { strikeSolver } from '../ball/strikeVectors.ts';
import { atan2, exp, log } from '../numeric/elementary.ts';
import type { PlanePoint } from '../geometry/points.ts';
import type { Candidate } from '../player/availability.ts';
import { acrossGrass, PUTT_PAST_M, puttingErrors, puttingSpread } from '../player/puttingSpread.ts';
import { meetsBallFirst, type StrikeSpread, strikeSpread } from '../player/strikeSpread.ts';
import { techniqueRules } from '../player/technique.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { GroundBetween } from './groundBetween.ts';
import { BALL_RADIUS_M, GRAVITY_MPS2, SLOPE_PULL_MPS2 } from '../ball/constants.ts';
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
  /** The size of swing to start a search from, for a shot of this length. */
  guess(distanceM: number): Guess;
}

export interface Guess {
  readonly clubheadMps: number;
  /** How far right of its swing the ball starts, radians. */
  readonly rightRad: number;
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
 * A first guess flies through a vacuum, rolls out of its spin on landing, keeps so much of that speed over its hops and comes
 * to rest on usual greens; distance grows with this power of speed. Good to a sixth on the sample course.
 */
const KEPT_ON_LANDING = 0.8;
const USUAL_ROLLING_MPS2 = 0.6;
export const USUAL_TOUCH = 1.7;

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
    guess(distanceM) {
      const trialMps = (putter ? 0.75 : 2.6) * Math.sqrt(distanceM + 0.3);
      solver.vectors(trialMps, 0, 0, 0, 0, launch);
      const across = launch[0] ?? 0;
      const along = launch[1] ?? 0;
      const up = Math.max(0, launch[2] ?? 0);
      const rolling = Math.max(0, along - (2 / 7) * (along + BALL_RADIUS_M * (launch[3] ?? 0)));
      const run = (putter ? 1 : KEPT_ON_LANDING) * rolling;
      const reach = (2 * up * along) / GRAVITY_MPS2 + (run * run) / (2 * USUAL_ROLLING_MPS2);
      return {
        clubheadMps: trialMps * exp(log(distanceM / Math.max(0.01, reach)) / USUAL_TOUCH),
        rightRad: atan2(across, along),
      };
    },
  };
}
