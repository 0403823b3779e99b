import { asin, atan2, cos, sin } from '../numeric/elementary.ts';
import { RADIANS_PER_DEGREE, RADPS_PER_RPM } from './constants.ts';
import type { Conditions, Launch, Lie, Strike } from './shot.ts';
import { strikeSolver, type StrikeDeviation } from './strikeVectors.ts';

const vectors = new Float64Array(6);

/**
 * The ball as it leaves one strike from one lie: see `strikeVectors` for the physics. The launch bearing differs from
 * the strike's own wherever an opened face or a sidehill lie turns it; a caller who wants a start line turns the strike
 * the other way by the difference, which does not depend on the bearing.
 */
export function launchFromStrike(
  strike: Strike,
  lie: Lie,
  conditions: Conditions,
  deviation: StrikeDeviation = { speedFactor: 1, faceDeg: 0, loftDeg: 0, contact: 0 },
): Launch {
  const solver = strikeSolver(strike, lie, conditions);
  solver.vectors(
    strike.clubheadMps * deviation.speedFactor,
    strike.bearingDeg * RADIANS_PER_DEGREE,
    deviation.faceDeg,
    deviation.loftDeg,
    deviation.contact,
    vectors,
  );
  return launchFromVectors(vectors, strike.bearingDeg);
}

/** The readable form of a velocity and a spin vector. A ball without speed keeps the bearing given. */
export function launchFromVectors(v: Float64Array, restingBearingDeg: number): Launch {
  const [x = 0, y = 0, z = 0, wx = 0, wy = 0, wz = 0] = v;
  const speed = Math.sqrt(x * x + y * y + z * z);
  if (speed === 0)
    return { speedMps: 0, elevationDeg: 0, bearingDeg: restingBearingDeg, backspinRpm: 0, spinAxisDeg: 0 };
  const bearing = atan2(x, y);
  const e = sin(bearing);
  const n = cos(bearing);
  const right = wx * n - wy * e;
  const spin = Math.sqrt(right * right + wz * wz);
  const degrees = bearing / RADIANS_PER_DEGREE;
  return {
    speedMps: speed,
    elevationDeg: asin(Math.min(1, Math.max(-1, z / speed))) / RADIANS_PER_DEGREE,
    bearingDeg: degrees < 0 ? degrees + 360 : degrees,
    // Spin about the line of flight itself does nothing and is left out.
    backspinRpm: (right < 0 ? -spin : spin) / RADPS_PER_RPM,
    spinAxisDeg: spin > 0 ? atan2(right < 0 ? wz : -wz, Math.abs(right)) / RADIANS_PER_DEGREE : 0,
  };
}
