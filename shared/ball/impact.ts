import { BALL_MASS_KG, BALL_RADIUS_M } from './constants.ts';

/** Mass of a clubhead that takes part, kg (rigid-body literature: Daish, Penner, Cross & Dewhurst; from memory). */
const CLUBHEAD_KG = 0.3;
const MASS_RATIO = BALL_MASS_KG / CLUBHEAD_KG;
/** Tangential restitution of an ordinary face and ball. Assumed within 0 to 0.4. */
export const TANGENTIAL_RESTITUTION = 0.2;

/**
 * Oblique impact of a rigid clubhead with a ball at rest, with friction, in three dimensions; velocity (m/s) and spin
 * (rad/s) of the ball into out[0..5], in the axes of the unit vectors given.
 *
 * With p the clubhead's path and n the normal of the face, eta the angle between them and k = m/M: normal speed
 * V cos(eta) (1 + e) / (1 + k), e = 0.83 - 0.0045 v_n (assumed); tangential speed (1 + e_t) V sin(eta) / (7/2 + k) while
 * the face grips, else mu v_n; spin 5 v_t / 2r (Daish 1972, Penner 2001, Cross & Dewhurst 2018; from memory).
 */
export function impact(
  speedMps: number,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
  friction: number,
  out: Float64Array,
): void {
  const cosine = px * nx + py * ny + pz * nz;
  const tx = px - cosine * nx;
  const ty = py - cosine * ny;
  const tz = pz - cosine * nz;
  const sine = Math.sqrt(tx * tx + ty * ty + tz * tz);
  const direct = (speedMps * cosine) / (1 + MASS_RATIO);
  // e depends on the speed it makes: v = direct (1 + 0.83 - 0.0045 v), solved for v.
  const normal = (1.83 * direct) / (1 + 0.0045 * direct);
  const grip = ((1 + TANGENTIAL_RESTITUTION) * speedMps * sine) / (3.5 + MASS_RATIO);
  const tangential = Math.min(grip, friction * normal);
  const t = sine > 1e-12 ? tangential / sine : 0;
  out[0] = normal * nx + t * tx;
  out[1] = normal * ny + t * ty;
  out[2] = normal * nz + t * tz;
  const w = (2.5 * t) / BALL_RADIUS_M;
  out[3] = w * (ty * nz - tz * ny);
  out[4] = w * (tz * nx - tx * nz);
  out[5] = w * (tx * ny - ty * nx);
}
