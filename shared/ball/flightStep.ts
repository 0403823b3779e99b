import { aerodynamicAcceleration, SPIN_DECAY_PER_M } from './aerodynamics.ts';
import { VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { hermite, hermiteSlope } from './hermite.ts';
import type { ShotWork } from './shotWork.ts';

const acceleration = new Float64Array(3);
/** Velocity and spin at the stage under way. */
const motion = new Float64Array(6);

/**
 * One classical Runge-Kutta step of flight from `state` to `next`: the force depends on velocity alone, so the stages need
 * no positions. Spin decays over the air it travels.
 */
export function flightStep(w: ShotWork, h: number): void {
  const s = w.state;
  const n = w.next;
  const a = acceleration;
  const air = w.air;
  const vx = s[VX] as number; // arrays here have fixed sizes, set once in shotWork
  const vy = s[VY] as number;
  const vz = s[VZ] as number;
  let wx = s[WX] as number;
  let wy = s[WY] as number;
  let wz = s[WZ] as number;
  const m = motion;
  m[0] = vx;
  m[1] = vy;
  m[2] = vz;
  m[3] = wx;
  m[4] = wy;
  m[5] = wz;
  aerodynamicAcceleration(air, m, a);
  const ax1 = a[0] as number;
  const ay1 = a[1] as number;
  const az1 = (a[2] as number) - GRAVITY_MPS2;
  const half = h / 2;
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  const decay = 1 - SPIN_DECAY_PER_M * speed * half;
  wx *= decay;
  wy *= decay;
  wz *= decay;
  m[0] = vx + half * ax1;
  m[1] = vy + half * ay1;
  m[2] = vz + half * az1;
  m[3] = wx;
  m[4] = wy;
  m[5] = wz;
  aerodynamicAcceleration(air, m, a);
  const ax2 = a[0] as number;
  const ay2 = a[1] as number;
  const az2 = (a[2] as number) - GRAVITY_MPS2;
  m[0] = vx + half * ax2;
  m[1] = vy + half * ay2;
  m[2] = vz + half * az2;
  aerodynamicAcceleration(air, m, a);
  const ax3 = a[0] as number;
  const ay3 = a[1] as number;
  const az3 = (a[2] as number) - GRAVITY_MPS2;
  wx *= decay;
  wy *= decay;
  wz *= decay;
  m[0] = vx + h * ax3;
  m[1] = vy + h * ay3;
  m[2] = vz + h * az3;
  m[3] = wx;
  m[4] = wy;
  m[5] = wz;
  aerodynamicAcceleration(air, m, a);
  const sixth = h / 6;
  n[X] = (s[X] as number) + h * (vx + sixth * (ax1 + ax2 + ax3));
  n[Y] = (s[Y] as number) + h * (vy + sixth * (ay1 + ay2 + ay3));
  n[Z] = (s[Z] as number) + h * (vz + sixth * (az1 + az2 + az3));
  n[VX] = vx + sixth * (ax1 + 2 * (ax2 + ax3) + (a[0] as number));
  n[VY] = vy + sixth * (ay1 + 2 * (ay2 + ay3) + (a[1] as number));
  n[VZ] = vz + sixth * (az1 + 2 * (az2 + az3) + (a[2] as number) - GRAVITY_MPS2);
  n[WX] = wx;
  n[WY] = wy;
  n[WZ] = wz;
}

/**
 * Brings the ball to a share of the step, on the cubic through both ends and its slope: in steps of this length it leaves
 * a step of its own by microns. Spin decays so little within a step that a straight line serves.
 */
export function cutFlight(w: ShotWork, h: number, u: number): void {
  const s = w.state;
  const n = w.next;
  for (let i = 0; i < 3; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    s[i] = hermite(a, va, b, vb, h, u);
    s[i + 3] = hermiteSlope(a, va, b, vb, h, u);
    const spin = s[i + 6] as number;
    s[i + 6] = spin + u * ((n[i + 6] as number) - spin);
  }
}
