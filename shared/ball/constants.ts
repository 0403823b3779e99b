/** Ball, hole and gravity. Sources are named at each number; marks as in the table of outside checks. */

/** Heaviest ball allowed, 1.620 oz (Equipment Rules; found). */
export const BALL_MASS_KG = 0.04593;
/** Half the smallest diameter allowed, 1.680 in (Equipment Rules; found). */
export const BALL_RADIUS_M = 0.02134;
/** Hole of 4 1/4 in (Rules of Golf, definition of Hole; found). */
export const HOLE_RADIUS_M = 0.053975;
export const GRAVITY_MPS2 = 9.80665;
/** A solid uniform sphere: I = 2/5 m r^2, so pure rolling keeps 5/7 of what a force does to a sliding one. */
export const ROLLING_SHARE = 5 / 7;
/** 5/7 g: what a slope does to a rolling ball. */
export const SLOPE_PULL_MPS2 = ROLLING_SHARE * GRAVITY_MPS2;
/** Ball speed at the foot of a Stimpmeter, 6.00 ft/s (Holmes 1991, Penner 2002; from memory, reproduced by computation). */
export const STIMP_RELEASE_MPS = 1.83;
export const METRES_PER_FOOT = 0.3048;

export const RADIANS_PER_DEGREE = Math.PI / 180;
export const RADPS_PER_RPM = Math.PI / 30;
