import { atan2, cos, sin } from '../numeric/elementary.ts';
import { RADIANS_PER_DEGREE, RADPS_PER_RPM } from './constants.ts';
import { faceContact } from './faceContact.ts';
import { heavyStrike } from './heavyStrike.ts';
import { impact } from './impact.ts';
import { sandStrike } from './sandStrike.ts';
import type { Conditions, Lie, Strike } from './shot.ts';

/** How one real strike departs from the one intended. */
export interface StrikeDeviation {
  /** Clubhead speed over the one intended. */
  readonly speedFactor: number;
  /** Face turned at impact, degrees, positive to the right. */
  readonly faceDeg: number;
  /** Added to the loft at impact, degrees. */
  readonly loftDeg: number;
  /** -1 as heavy as it gets, 0 the intended contact, +1 a topped ball. */
  readonly contact: number;
}

export interface StrikeSolver {
  /**
   * Velocity (m/s; east, north, up) and spin vector (rad/s) of the ball into out[0..5]. Allocates nothing.
   * `bearingRad` is the line of the swing.
   */
  vectors(
    clubheadMps: number,
    bearingRad: number,
    faceDeg: number,
    loftDeg: number,
    contact: number,
    out: Float64Array,
  ): void;
}

/** Angle of a wedge's shaft to the ground, degrees. Common practice. */
const SHAFT_ANGLE_DEG = 63;

/**
 * Strikes by one club from one lie on one day: what can be worked out before the swing is.
 *
 * The face starts square at the printed loft less the lean. Opening turns it about the shaft: that adds loft, turns the
 * face from the line, and shows more of the sole. The player sets up parallel to the slope: along the line, face and
 * path turn up with the ground degree for degree (first order; from memory); across it, face and sole tilt with the
 * feet, so that the face looks downhill the more the more loft it has. Then follows the oblique impact (`impact`), with
 * the friction and the speed that the lie leaves (`faceContact`); in sand the ball rides on the sand (`sandStrike`),
 * unless the strike is meant to meet the ball first.
 * A heavy strike loses speed to the turf (`heavyStrike`); a thin one loses loft and spin (assumed).
 */
export function strikeSolver(strike: Strike, lie: Lie, conditions: Conditions): StrikeSolver {
  const mirror = strike.handed === 'left' ? -1 : 1;
  const putter = strike.clubKind === 'putter';
  const contactOfLie = faceContact(lie, conditions);
  const inSand = lie.cover === 'bunker' && !putter;
  const sand = inSand && strike.ballFirst !== true ? sandStrike(lie, conditions) : null;
  // The law of sand has the sitting of the ball in it already.
  const lieLoftDeg = sand === null ? contactOfLie.loftDeg : 0;
  const digsAtOnce = inSand && sand === null;
  const heavy = heavyStrike(strike, lie, conditions);
  const open = strike.faceOpenDeg * RADIANS_PER_DEGREE;
  const shaft = SHAFT_ANGLE_DEG * RADIANS_PER_DEGREE;
  const cosShaft = putter ? 0 : cos(shaft);
  const sinShaft = putter ? 1 : sin(shaft);
  const cosOpen = cos(open);
  const sinOpen = sin(open);
  const across = lie.acrossDeg * RADIANS_PER_DEGREE;
  const cosAcross = cos(across);
  const sinAcross = sin(across);
  const along = lie.alongDeg * RADIANS_PER_DEGREE;
  const cosAlong = cos(along);
  const sinAlong = sin(along);
  const local = new Float64Array(6);

  return {
    vectors(clubheadMps, bearingRad, faceDeg, loftDeg, contact, out) {
      // Axes while working: x along the line, y to the side the player stands on (left for a right-hander), z up.
      const thin = contact > 0 ? Math.min(1, contact) : 0;
      const early = contact < 0 ? Math.min(1, -contact) : 0;
      // A little sand before the ball costs most of what much of it does.
      const fat = digsAtOnce ? Math.sqrt(early) : early;
      const loft =
        (strike.loftDeg - strike.leanDeg + lieLoftDeg + loftDeg) * (1 - 0.75 * thin * thin) -
        fat * heavy.loftLossDeg;
      const loftRad = loft * RADIANS_PER_DEGREE;
      let nx = cos(loftRad);
      let ny = 0;
      let nz = sin(loftRad);
      // Open the face: turn the normal about the shaft, which leans towards the player.
      if (open !== 0) {
        const dot = sinShaft * nz;
        const kx = -cosShaft * nz;
        const ky = -sinShaft * nx;
        const kz = cosShaft * nx;
        const rest = dot * (1 - cosOpen);
        ny = ky * sinOpen + cosShaft * rest;
        nx = nx * cosOpen + kx * sinOpen;
        nz = nz * cosOpen + kz * sinOpen + sinShaft * rest;
      }
      // A face turned by mistake: about the vertical.
      if (faceDeg !== 0) {
        const turn = -faceDeg * mirror * RADIANS_PER_DEGREE;
        const c = cos(turn);
        const s = sin(turn);
        const x = nx * c - ny * s;
        ny = nx * s + ny * c;
        nx = x;
      }
      // The ground tilts club and swing across the line: ball above the feet turns the face to the player's side.
      const y0 = ny * cosAcross + nz * sinAcross;
      nz = nz * cosAcross - ny * sinAcross;
      ny = y0;
      const attack = strike.attackDeg * RADIANS_PER_DEGREE;
      let px = cos(attack);
      let pz = sin(attack);
      const speed =
        clubheadMps * contactOfLie.speedShare * (1 - fat * heavy.speedLoss) * (1 - 0.2 * thin * thin);
      if (sand !== null) {
        // Out of sand the face never meets the ball: it leaves along a share of the loft, a little towards the face.
        const level = Math.sqrt(nx * nx + ny * ny);
        const elevation = atan2(nz, level) * sand.launchPerLoft * (1 - 0.7 * thin);
        const ballSpeed =
          clubheadMps * (sand.speedRatio + (0.9 - sand.speedRatio) * thin) * (1 - fat * heavy.speedLoss);
        const turned = level > 0 ? atan2(ny, nx) * 0.7 : 0;
        const ce = cos(elevation);
        local[0] = ballSpeed * ce * cos(turned);
        local[1] = ballSpeed * ce * sin(turned);
        local[2] = ballSpeed * sin(elevation);
        const spin = sand.spinPerMps * clubheadMps * RADPS_PER_RPM * (1 - 0.8 * fat) * (1 - 0.5 * thin);
        local[3] = spin * sin(turned);
        local[4] = -spin * cos(turned);
        local[5] = 0;
      } else {
        impact(speed, px, 0, pz, nx, ny, nz, contactOfLie.friction * (1 - 0.5 * (thin + fat)), local);
      }
      px = local[0] as number; // six entries
      const py = (local[1] as number) * mirror;
      pz = local[2] as number;
      // Turn all up with the slope along the line, then to the bearing. Mirroring turns a spin vector the other way.
      const vx = px * cosAlong - pz * sinAlong;
      const vz = px * sinAlong + pz * cosAlong;
      const sx = (local[3] as number) * mirror;
      const sy = local[4] as number;
      const sz = (local[5] as number) * mirror;
      const wx = sx * cosAlong - sz * sinAlong;
      const wz = sx * sinAlong + sz * cosAlong;
      const e = sin(bearingRad);
      const n = cos(bearingRad);
      out[0] = vx * e - py * n;
      out[1] = vx * n + py * e;
      out[2] = vz;
      out[3] = wx * e - sy * n;
      out[4] = wx * n + sy * e;
      out[5] = wz;
    },
  };
}
