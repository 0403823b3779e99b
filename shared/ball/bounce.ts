import { BALL_RADIUS_M } from './constants.ts';
import type { CoverTable } from './coverPhysics.ts';

/** Normal speed of Penner's calibration impact: 18.6 m/s at 44.4 degrees from the vertical. */
const NORMAL_AT_CALIBRATION_MPS = 13.29;
const ANGLE_AT_CALIBRATION_RAD = (44.4 * Math.PI) / 180;
const RESTITUTION_PER_MPS = 0.0375;
const RESTITUTION_PER_MPS2 = 0.000903;
const RESTITUTION_FLOOR = 0.12;

/**
 * Normal speeds between which a landing goes from dead to its full rebound. Grass cushions the last hops; without the
 * fade the choice between one hop more and rolling would be a coin toss worth decimetres. Assumed; it takes the place of
 * a bare cut-off, to which the run is known to be insensitive (2 % from 0.1 to 0.5 m/s; computed).
 */
const DEAD_BELOW_MPS = 0.2;
const FULL_ABOVE_MPS = 0.7;

/** State of a ball as the hot code keeps it: position (ball's lowest point), velocity, spin vector. */
export const X = 0;
export const Y = 1;
export const Z = 2;
export const VX = 3;
export const VY = 4;
export const VZ = 5;
export const WX = 6;
export const WY = 7;
export const WZ = 8;
export const STATE_SIZE = 9;

/** Angle from the normal, by the minimax polynomial of Abramowitz & Stegun 4.4.49 (error under 1e-5 rad; from memory). */
function angleFromNormal(tangential: number, normal: number): number {
  const x = tangential < normal ? tangential / normal : normal / tangential;
  const z = x * x;
  const angle = x * (0.999866 + z * (-0.3302995 + z * (0.180141 + z * (-0.085133 + z * 0.0208351))));
  return tangential < normal ? angle : Math.PI / 2 - angle;
}

/**
 * One impact of a spinning ball with deforming turf on a slope, in place on `state` (velocity and spin).
 *
 * Penner (2002, "The run of a golf ball", Can. J. Phys. 80:931; constants from memory): the crater acts as a rigid
 * surface turned against the ball by an angle; in that frame the ball rebounds with restitution e(v) and slides or rolls
 * out by friction. The tilt here goes with the *normal* speed (the greenside law): the same at the calibration
 * impact, and nothing for a grazing ball, which under Penner's own law would launch itself again for ever.
 * Worked in three dimensions, so that a tilted spin axis kicks sideways. Energy never grows: the frame only turns.
 *
 * @param ground at the contact: height, gradient, cover code
 * @param turf of each cover: restitution at no speed, which falls with speed as Penner's, never below his floor times the
 * cover's share; tilt of the crater at the calibration impact; friction
 */
export function bounce(
  state: Float64Array,
  ground: Float64Array,
  turf: Pick<CoverTable, 'restitution' | 'tiltRad' | 'friction'>,
): void {
  const slopeEast = ground[1] as number; // four entries
  const slopeNorth = ground[2] as number;
  const code = ground[3] as number;
  const restitution = turf.restitution[code] as number; // an entry for every cover
  const tiltRad = turf.tiltRad[code] as number;
  const friction = turf.friction[code] as number;
  const scale = 1 / Math.sqrt(1 + slopeEast * slopeEast + slopeNorth * slopeNorth);
  let nx = -slopeEast * scale;
  let ny = -slopeNorth * scale;
  let nz = scale;
  const vx = state[VX] as number; // the state always has its nine entries
  const vy = state[VY] as number;
  const vz = state[VZ] as number;
  const normal = vx * nx + vy * ny + vz * nz;
  const tx = vx - normal * nx;
  const ty = vy - normal * ny;
  const tz = vz - normal * nz;
  const tangential = Math.sqrt(tx * tx + ty * ty + tz * tz);
  const share = Math.min(1, Math.max(0, (-normal - DEAD_BELOW_MPS) / (FULL_ABOVE_MPS - DEAD_BELOW_MPS)));
  const alive = share * share * (3 - 2 * share);
  if (tangential > 1e-9 && tiltRad > 0) {
    const tilt = Math.min(
      ((alive * tiltRad * -normal) / NORMAL_AT_CALIBRATION_MPS) *
        (angleFromNormal(tangential, -normal) / ANGLE_AT_CALIBRATION_RAD),
      0.7,
    );
    // Turning the normal back along the way the ball comes; sine and cosine by half angles keep it a rotation.
    const half = tilt * (0.5 + (tilt * tilt) / 24);
    const c = (1 - half * half) / (1 + half * half);
    const s = (2 * half) / (1 + half * half) / tangential;
    nx = nx * c - tx * s;
    ny = ny * c - ty * s;
    nz = nz * c - tz * s;
  }
  const inward = -(vx * nx + vy * ny + vz * nz);
  if (inward <= 0) return;
  const slow = Math.min(inward, 20);
  const e =
    restitution > 0
      ? alive *
        Math.max(
          (RESTITUTION_FLOOR / 0.51) * restitution,
          restitution - RESTITUTION_PER_MPS * slow + RESTITUTION_PER_MPS2 * slow * slow,
        )
      : 0;
  const wx = state[WX] as number;
  const wy = state[WY] as number;
  const wz = state[WZ] as number;
  // Velocity of the ball's skin at the contact: v_t - r w x n.
  const ux = vx + inward * nx - BALL_RADIUS_M * (wy * nz - wz * ny);
  const uy = vy + inward * ny - BALL_RADIUS_M * (wz * nx - wx * nz);
  const uz = vz + inward * nz - BALL_RADIUS_M * (wx * ny - wy * nx);
  const slip = Math.sqrt(ux * ux + uy * uy + uz * uz);
  const limit = friction * (1 + e) * inward;
  // Rolling out takes 2/7 of the slip from the ball's speed; less friction than that lets it slide all through.
  const grip = slip > 0 ? Math.min(2 / 7, limit / slip) : 0;
  const jx = -grip * ux;
  const jy = -grip * uy;
  const jz = -grip * uz;
  const lift = (1 + e) * inward;
  state[VX] = vx + lift * nx + jx;
  state[VY] = vy + lift * ny + jy;
  state[VZ] = vz + lift * nz + jz;
  const spin = -2.5 / BALL_RADIUS_M;
  state[WX] = wx + spin * (ny * jz - nz * jy);
  state[WY] = wy + spin * (nz * jx - nx * jz);
  state[WZ] = wz + spin * (nx * jy - ny * jx);
}
