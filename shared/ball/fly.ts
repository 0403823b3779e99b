import { aerodynamicAcceleration, SPIN_DECAY_PER_M } from './aerodynamics.ts';
import { VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { anyNear, meetObstacles } from './obstacles.ts';
import { MARK_APEX, type ShotWork } from './shotWork.ts';

/** Steeper ground than this (rise over run) between two looks may be met late, never missed for good. */
const STEEPEST = 0.6;
/** Looks at the ground are at least this far apart, metres along the plane. */
const LEAST_TRAVEL_M = 0.18;
/** Within this travel the plane under the ball predicts the contact. */
const JUMP_M = 0.8;
const CONTACT_M = 3e-4;
const LONGEST_STEP_S = 0.25;
/** A step bends by less than this from its straight start. */
const BESIDE_M = 0.5;
/** Longest way of a step beside a crown or a wall, so that its straight chord is the flight. */
const BESIDE_OBSTACLE_M = 0.5;
const MOST_STEPS = 100_000;
/** A flight lower than this under its start is lost. */
const LOST_BELOW_M = 500;

const acceleration = new Float64Array(3);
/** Velocity and spin at the stage under way. */
const motion = new Float64Array(6);

/**
 * One classical Runge-Kutta step of flight from `state` to `next`: the force depends on velocity alone, so the stages need
 * no positions. Spin decays over the air it travels.
 */
function flightStep(w: ShotWork, h: number): void {
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

/** Cubic through both ends of a step with their velocities, for one coordinate: value at share u. */
function between(a: number, va: number, b: number, vb: number, h: number, u: number): number {
  const d = b - a;
  const p = h * va - d;
  const q = d - h * vb;
  return a + u * (d + (1 - u) * (p * (1 - u) + q * u));
}

/**
 * Flies the ball from `state` until it meets the ground; leaves it there, with the ground under it in `here`.
 * Needs `here` at the start. Returns false if the ball is lost below the ground for good.
 */
export function fly(w: ShotWork): boolean {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  const marks = w.marks;
  const ground = w.ground;
  const lost = (s[Z] as number) - LOST_BELOW_M;
  let known = true;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const vx = s[VX] as number;
    const vy = s[VY] as number;
    const vz = s[VZ] as number;
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    let h = w.stepFactor * Math.min(LONGEST_STEP_S, 2.4 / (speed + 0.1));
    const x = s[X] as number;
    const y = s[Y] as number;
    const near = w.obstacles.length > 0 && anyNear(w, x, y, x + h * vx, y + h * vy, BESIDE_M);
    if (near) h = Math.min(h, BESIDE_OBSTACLE_M / (speed + 0.1));
    flightStep(w, h);
    if (near && meetObstacles(w)) {
      known = false;
      continue;
    }
    const top = (n[VZ] as number) > 0 ? (n[Z] as number) : peak(s, n, h);
    if (top > (marks[MARK_APEX] as number)) marks[MARK_APEX] = top;
    const lowest = Math.min(s[Z] as number, n[Z] as number);
    if (lowest > w.maxHeightM) {
      advance(w, h);
      known = false;
      continue;
    }
    if (!known) ground.sample(s[X] as number, s[Y] as number, here);
    const t = contactTime(w, h);
    if (t >= 0) {
      const u = t / h;
      if (w.record !== null) recordFlight(w, h, u);
      cutFlight(w, h, u);
      // The last look was within a millimetre of the contact: the plane through it is there, its height is the ball's.
      here[0] = s[Z] as number;
      return true;
    }
    advance(w, h);
    known = false;
    if ((s[Z] as number) < lost) return false;
  }
  return false;
}

/**
 * Brings the ball to a share of the step, on the cubic through both ends and its slope: in steps of this length it leaves
 * a step of its own by microns. Spin decays so little within a step that a straight line serves.
 */
function cutFlight(w: ShotWork, h: number, u: number): void {
  const s = w.state;
  const n = w.next;
  for (let i = 0; i < 3; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    s[i] = between(a, va, b, vb, h, u);
    s[i + 3] = va + u * (vb - va) + 3 * u * (1 - u) * ((2 * (b - a)) / h - va - vb);
    const spin = s[i + 6] as number;
    s[i + 6] = spin + u * ((n[i + 6] as number) - spin);
  }
}

/** Height at the top of a step's cubic, taken as a parabola from its two ends. */
function peak(s: Float64Array, n: Float64Array, h: number): number {
  const v0 = s[VZ] as number;
  if (v0 <= 0) return s[Z] as number;
  const u = v0 / (v0 - (n[VZ] as number));
  return between(s[Z] as number, v0, n[Z] as number, n[VZ] as number, h, u);
}

function advance(w: ShotWork, h: number): void {
  if (w.record !== null) recordFlight(w, h, 1);
  const s = w.state;
  const n = w.next;
  for (let i = 0; i < 9; i += 1) s[i] = n[i] as number;
}

function recordFlight(w: ShotWork, h: number, until: number): void {
  const s = w.state;
  const n = w.next;
  const points = (w.record as NonNullable<typeof w.record>).points; // called only while recording
  const parts = Math.max(1, Math.ceil((until * h) / 0.04));
  for (let k = 1; k <= parts; k += 1) {
    const u = (until * k) / parts;
    for (let i = 0; i < 3; i += 1) {
      points.push(between(s[i] as number, s[i + 3] as number, n[i] as number, n[i + 3] as number, h, u));
    }
  }
}

/**
 * Time into the step at which the ball meets the ground, with `here` left there; -1 if it does not. Looks ahead no
 * farther than the ball could fall onto ground of the steepest kind, then by the plane under it.
 */
function contactTime(w: ShotWork, h: number): number {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  const ground = w.ground;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const z0 = s[Z] as number;
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vz0 = s[VZ] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const z1 = n[Z] as number;
  const vx1 = n[VX] as number;
  const vy1 = n[VY] as number;
  const vz1 = n[VZ] as number;
  let t = 0;
  let clear = z0 - (here[0] as number);
  let above = 0;
  let aboveClear = clear;
  for (let look = 0; look < 4000; look += 1) {
    const u = t / h;
    const vx = vx0 + u * (vx1 - vx0);
    const vy = vy0 + u * (vy1 - vy0);
    const vz = vz0 + u * (vz1 - vz0);
    const closing = vz - (here[1] as number) * vx - (here[2] as number) * vy;
    const across = Math.sqrt(vx * vx + vy * vy);
    if (clear < 0) {
      if (closing < 0) {
        // Met between the last look above the ground and this one.
        if (clear > -CONTACT_M || t - above < 1e-7) return Math.max(0, t - clear / closing);
        const share =
          aboveClear > 0 ? Math.max(0.05, Math.min(0.95, aboveClear / (aboveClear - clear))) : 0.5;
        t = above + (t - above) * share;
        const v = t / h;
        ground.sample(between(x0, vx0, x1, vx1, h, v), between(y0, vy0, y1, vy1, h, v), here);
        clear = between(z0, vz0, z1, vz1, h, v) - (here[0] as number);
        if (clear >= 0) {
          above = t;
          aboveClear = clear;
        }
        continue;
      }
      clear = 0;
    }
    above = t;
    aboveClear = clear;
    const plane = (closing + Math.sqrt(closing * closing + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
    let ahead: number;
    let jumped = false;
    if (plane * across <= JUMP_M) {
      ahead = plane;
      jumped = true;
      if (ahead < 1e-7) return t;
    } else {
      const worst = vz - STEEPEST * across;
      const safe = (worst + Math.sqrt(worst * worst + 2 * GRAVITY_MPS2 * clear)) / GRAVITY_MPS2;
      ahead = Math.max(safe, (w.stepFactor * LEAST_TRAVEL_M) / across);
    }
    if (t + ahead >= h) return -1;
    t += ahead;
    const v = t / h;
    ground.sample(between(x0, vx0, x1, vx1, h, v), between(y0, vy0, y1, vy1, h, v), here);
    clear = between(z0, vz0, z1, vz1, h, v) - (here[0] as number);
    if (jumped && Math.abs(clear) < CONTACT_M) {
      const wz = vz0 + v * (vz1 - vz0);
      const wx = vx0 + v * (vx1 - vx0);
      const wy = vy0 + v * (vy1 - vy0);
      const rate = wz - (here[1] as number) * wx - (here[2] as number) * wy;
      if (rate < 0) return Math.max(0, t - clear / rate);
    }
  }
  return -1;
}
