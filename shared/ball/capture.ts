import { BALL_RADIUS_M, HOLE_RADIUS_M } from './constants.ts';

/** Fastest centred ball that drops (Holmes 1991, Am. J. Phys. 59:129; from memory, reproduced by a rigid-body computation). */
export const CENTRED_CAPTURE_MPS = 1.63;

/**
 * Fastest ball captured at the rim when its centre passes `offsetM` from the middle of the hole:
 * 1.63 (1 - (d/R)^2), a fit (rms 0.045 m/s) to a rigid-body computation that returns Holmes' centred limit untuned.
 */
export function captureLimitMps(offsetM: number): number {
  const ratio = offsetM / HOLE_RADIUS_M;
  return ratio >= 1 ? 0 : CENTRED_CAPTURE_MPS * (1 - ratio * ratio);
}

/**
 * Added to the centred limit per unit of rise along the ball's way: a ball going uphill meets the far rim higher up.
 * Fitted to +0.01 to 0.03 m/s up and -0.02 to -0.03 down 3 % (rigid-body computation).
 */
const LIMIT_PER_RISE_MPS = 0.75;

/** Centred limit of a ball that climbs by `rise` (rise over run, negative downhill) along its way. */
export const centredLimitMps = (rise: number): number =>
  CENTRED_CAPTURE_MPS + LIMIT_PER_RISE_MPS * Math.min(0.1, Math.max(-0.1, rise));

/** Half the thickness of a flagstick at the hole: 3/4 in is the most the Equipment Rules allow (2 in above; from memory); 1/2 in assumed. */
const FLAGSTICK_RADIUS_M = 0.00635;
/** Share of its speed towards a flagstick that a ball comes back with; what goes past it is kept. Assumed. */
const FLAGSTICK_KEEPS = 0.4;
/** Distance of the ball's middle from the stick's as they touch. */
const TOUCH_M = BALL_RADIUS_M + FLAGSTICK_RADIUS_M;

/** How far off the stick's middle a ball of this speed, too fast for the bare hole there, may pass and still be dropped by the stick. */
function flagstickReachM(speedMps: number): number {
  const kept = CENTRED_CAPTURE_MPS / speedMps;
  const keeps2 = FLAGSTICK_KEEPS * FLAGSTICK_KEEPS;
  const sine2 = (kept * kept - keeps2) / (1 - keeps2);
  return sine2 <= 0 ? 0 : TOUCH_M * Math.sqrt(Math.min(1, sine2));
}

/** Half the width that takes a ball of this speed, with `limitMps` the centred limit; 0 where nothing holds it. */
export function captureReachM(speedMps: number, limitMps: number, flagstickIn: boolean): number {
  const bare = speedMps >= limitMps ? 0 : HOLE_RADIUS_M * Math.sqrt(1 - speedMps / limitMps);
  return flagstickIn ? Math.max(bare, flagstickReachM(speedMps)) : bare;
}

/** What the hole does to a ball whose path crosses it. */
export const CAPTURED = 0;
export const DEFLECTED = 1;

/**
 * Meets the hole at the closest approach. `velocity` holds vx, vy at entry 0 and 1 and is changed in place when the ball
 * comes out again. `offsetM` is positive when the hole lies to the right of the path.
 *
 * `slopeEast` and `slopeNorth` are the gradient of the ground at the hole.
 *
 * A ball too fast to drop is robbed of energy and turned towards the hole by the rim, the more the nearer its speed is
 * to the limit: speed^2 less half the limit^2, turned by up to 70 degrees at mid-radius. A simple stand-in for the
 * lip-outs of Hogan & Antali (2025): the share and the angle are assumed.
 * With the flagstick left in, a ball that meets it comes off it as off a smooth post, 0.4 of its speed towards it turned
 * back (assumed), and drops if what it keeps is below the limit for a centred ball: an approximation. The stick stands
 * upright, has no flag, meets rolling balls alone, and never keeps out a ball that would drop without it.
 */
export function meetHole(
  velocity: Float64Array,
  offsetM: number,
  flagstickIn: boolean,
  slopeEast = 0,
  slopeNorth = 0,
): number {
  const vx = velocity[0] as number; // both entries exist
  const vy = velocity[1] as number;
  const speed = Math.sqrt(vx * vx + vy * vy);
  const apart = Math.abs(offsetM);
  const level = captureLimitMps(apart);
  if (speed <= 0.8 * level) return CAPTURED;
  const rise = (slopeEast * vx + slopeNorth * vy) / speed;
  const limit = (level / CENTRED_CAPTURE_MPS) * centredLimitMps(rise);
  if (speed <= limit) return CAPTURED;
  if (flagstickIn && apart < TOUCH_M) {
    if (apart < flagstickReachM(speed)) return CAPTURED;
    // The part along the line of centres is turned back.
    const sine = offsetM / TOUCH_M;
    const cosine = Math.sqrt(1 - sine * sine);
    const along = 1 - (1 + FLAGSTICK_KEEPS) * cosine * cosine;
    const aside = (1 + FLAGSTICK_KEEPS) * cosine * sine;
    velocity[0] = along * vx - aside * vy;
    velocity[1] = along * vy + aside * vx;
    return DEFLECTED;
  }
  const closeness = limit / speed;
  const turn = (apart / HOLE_RADIUS_M) * (1 - apart / HOLE_RADIUS_M) * 4 * closeness * closeness * 1.22;
  const half = (turn / 2) * (1 + (turn * turn) / 12);
  const c = (1 - half * half) / (1 + half * half);
  const s = ((2 * half) / (1 + half * half)) * Math.sign(offsetM);
  const keeps = Math.sqrt(1 - 0.5 * closeness * closeness);
  velocity[0] = keeps * (c * vx + s * vy);
  velocity[1] = keeps * (c * vy - s * vx);
  return DEFLECTED;
}
