import { SLOPE_PULL_MPS2 } from '../ball/constants.ts';
import { pow } from '../numeric/elementary.ts';

/** A putt as it is meant, for asking what errors do to it. */
export interface PuttAhead {
  readonly distanceM: number;
  /** Speed meant at the start and at the hole. */
  readonly startMps: number;
  readonly holeMps: number;
  /** Deceleration of a ball rolling on the level, m/s^2. */
  readonly rollingMps2: number;
}

/** Standard deviations of what is read wrong. */
export interface Misread {
  /** Of the slope along the line and across it, rise over run. */
  readonly alongSd: number;
  readonly acrossSd: number;
  /** Of the deceleration on the level, as a share: how fast the green is. */
  readonly paceSd: number;
}

export interface MisreadErrors {
  /** Standard deviation of the start speed, as a share of it. */
  readonly speedSd: number;
  /** Standard deviation of the aim, radians. */
  readonly aimRad: number;
}

/** The ball is taken to lose at least this share of what level ground would brake it by: beyond, the forms run away. */
const LEAST_BRAKE = 0.05;
/** Nobody's error of pace is taken to be wider than this. */
const WIDEST_SPEED_SD = 0.35;

/**
 * What misreading the ground does to a putt along a plane, in closed form.
 *
 * Along the line: v0^2 = vh^2 + 2 d A with A = a + (5/7) g s the net deceleration, so an error dA in judging it makes
 * the start speed wrong by d dA / v0^2 of itself: about dA / 2A, large where the ball hardly slows, as it does downhill.
 *
 * Across it: the heading phi of a ball on ground that falls by s along its way and by ds across obeys
 * d(phi)/dt = (5/7) g (ds - s phi) / v; with dv/dt = -A it turns as phi ~ v^k, k = a/A - 1. A start error of one is
 * then worth d F at the hole, F = 2 (1 - p^(k+2)) / ((k + 2) (1 - p^2)) with p = vh/v0, and the aim that makes up for ds
 * is (ds/s) (1/F - 1) = ds ((5/7) g / A) (1/F - 1) / k. For a fast ball this is 1/2 (5/7) g ds t^2 / d with t the time it
 * rolls: it grows with length, on fast greens and downhill.
 */
export function misreadErrors(putt: PuttAhead, { alongSd, acrossSd, paceSd }: Misread): MisreadErrors {
  const { distanceM, rollingMps2 } = putt;
  const start2 = putt.startMps * putt.startMps;
  const hole2 = putt.holeMps * putt.holeMps;
  const brake = Math.max(LEAST_BRAKE * rollingMps2, (start2 - hole2) / (2 * distanceM));
  const pull = SLOPE_PULL_MPS2 * alongSd;
  const green = rollingMps2 * paceSd;
  // What the ball has left of its speed, squared, at the net deceleration taken.
  const left2 = Math.max(0, 1 - (2 * distanceM * brake) / start2);
  const lost2 = Math.max(1e-6, 1 - left2);
  let k = rollingMps2 / brake - 1;
  if (Math.abs(k) < 1e-3) k = 1e-3;
  const focus = (2 * (1 - (left2 > 0 ? pow(left2, k / 2 + 1) : 0))) / ((k + 2) * lost2);
  return {
    speedSd: Math.min(WIDEST_SPEED_SD, (distanceM * Math.sqrt(pull * pull + green * green)) / start2),
    aimRad: (acrossSd * SLOPE_PULL_MPS2 * (1 / focus - 1)) / (brake * k),
  };
}
