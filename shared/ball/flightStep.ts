import { aerodynamicAcceleration, SPIN, SPIN_DECAY_PER_M } from './aerodynamics.ts';
import { VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { hermite } from './hermite.ts';
import { CONTACT_S, STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, motion: m, acceleration: a, endsMps2: e, times } = shotMemory;

/**
 * One classical Runge-Kutta step of flight from `state` to `next`: the force depends on velocity alone, so the stages need
 * no positions. Spin decays over the air it travels.
 */
export function flightStep(w: ShotWork): void {
  const h = times[STEP_S] as number;
  const air = w.air;
  const vx = s[VX] as number; // arrays here have fixed sizes, set once in shotMemory
  const vy = s[VY] as number;
  const vz = s[VZ] as number;
  let wx = s[WX] as number;
  let wy = s[WY] as number;
  let wz = s[WZ] as number;
  m[0] = vx;
  m[1] = vy;
  m[2] = vz;
  m[3] = wx;
  m[4] = wy;
  m[5] = wz;
  const spin = Math.sqrt(wx * wx + wy * wy + wz * wz);
  m[SPIN] = spin;
  aerodynamicAcceleration(air, m, a);
  const ax1 = a[0] as number;
  const ay1 = a[1] as number;
  const az1 = (a[2] as number) - GRAVITY_MPS2;
  const half = h / 2;
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  const halfway = 1 - SPIN_DECAY_PER_M * speed * half;
  m[0] = vx + half * ax1;
  m[1] = vy + half * ay1;
  m[2] = vz + half * az1;
  m[3] = wx * halfway;
  m[4] = wy * halfway;
  m[5] = wz * halfway;
  m[SPIN] = spin * halfway;
  aerodynamicAcceleration(air, m, a);
  const ax2 = a[0] as number;
  const ay2 = a[1] as number;
  const az2 = (a[2] as number) - GRAVITY_MPS2;
  const mx = vx + half * ax2;
  const my = vy + half * ay2;
  const mz = vz + half * az2;
  m[0] = mx;
  m[1] = my;
  m[2] = mz;
  aerodynamicAcceleration(air, m, a);
  const ax3 = a[0] as number;
  const ay3 = a[1] as number;
  const az3 = (a[2] as number) - GRAVITY_MPS2;
  // By the speed half-way: by that at the start it would be the one part of a step that is of first order.
  const lost = SPIN_DECAY_PER_M * h * Math.sqrt(mx * mx + my * my + mz * mz);
  const decay = 1 - lost + 0.5 * lost * lost;
  wx *= decay;
  wy *= decay;
  wz *= decay;
  m[0] = vx + h * ax3;
  m[1] = vy + h * ay3;
  m[2] = vz + h * az3;
  m[3] = wx;
  m[4] = wy;
  m[5] = wz;
  m[SPIN] = spin * decay;
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
  e[0] = ax1;
  e[1] = ay1;
  e[2] = az1;
  e[3] = a[0] as number;
  e[4] = a[1] as number;
  e[5] = (a[2] as number) - GRAVITY_MPS2;
}

/**
 * The same by the midpoint rule, for the hops of a ball that hardly leaves the ground: half the work, and over a tenth of a
 * second within a tenth of a millimetre and of a millimetre a second.
 */
export function hopStep(w: ShotWork): void {
  const h = times[STEP_S] as number;
  const wx = s[WX] as number;
  const wy = s[WY] as number;
  const wz = s[WZ] as number;
  for (let i = 0; i < 6; i += 1) m[i] = s[i + 3] as number;
  m[SPIN] = Math.sqrt(wx * wx + wy * wy + wz * wz);
  aerodynamicAcceleration(w.air, m, a);
  const ax = a[0] as number;
  const ay = a[1] as number;
  const az = (a[2] as number) - GRAVITY_MPS2;
  const half = h / 2;
  const vx = m[0] as number;
  const vy = m[1] as number;
  const vz = m[2] as number;
  const mx = vx + half * ax;
  const my = vy + half * ay;
  const mz = vz + half * az;
  m[0] = mx;
  m[1] = my;
  m[2] = mz;
  const lost = SPIN_DECAY_PER_M * h * Math.sqrt(mx * mx + my * my + mz * mz);
  e[0] = ax;
  e[1] = ay;
  e[2] = az;
  aerodynamicAcceleration(w.air, m, a);
  const bx = a[0] as number;
  const by = a[1] as number;
  const bz = (a[2] as number) - GRAVITY_MPS2;
  const sixth = (h * h) / 6;
  n[X] = (s[X] as number) + h * vx + sixth * (ax + 2 * bx);
  n[Y] = (s[Y] as number) + h * vy + sixth * (ay + 2 * by);
  n[Z] = (s[Z] as number) + h * vz + sixth * (az + 2 * bz);
  n[VX] = vx + h * bx;
  n[VY] = vy + h * by;
  n[VZ] = vz + h * bz;
  n[WX] = wx * (1 - lost);
  n[WY] = wy * (1 - lost);
  n[WZ] = wz * (1 - lost);
  e[3] = 2 * bx - ax;
  e[4] = 2 * by - ay;
  e[5] = 2 * bz - az;
}

/**
 * Brings the ball to its contact within the step, on the cubic through both ends; its velocity goes by the cubic through the
 * accelerations there, since the slope of the other would be off by as much as decides millimetres of the run. Spin decays
 * so little within a step that a straight line serves.
 */
export function cutFlight(): void {
  const h = times[STEP_S] as number;
  const u = (times[CONTACT_S] as number) / h;
  for (let i = 0; i < 3; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    s[i] = hermite(a, va, b, vb, h, u);
    s[i + 3] = hermite(va, e[i] as number, vb, e[i + 3] as number, h, u);
    const spin = s[i + 6] as number;
    s[i + 6] = spin + u * ((n[i + 6] as number) - spin);
  }
}
