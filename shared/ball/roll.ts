import { coverCode } from '../words/vocabulary.ts';
import { BALL_RADIUS_M, GRAVITY_MPS2, HOLE_RADIUS_M, ROLLING_SHARE } from './constants.ts';
import { VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { CAPTURED, meetHole } from './capture.ts';
import { meetOnGround } from './obstacles.ts';
import { MARK_ENTRY_EAST, MARK_ENTRY_NORTH, type ShotWork } from './shotWork.ts';

export const ROLL_AT_REST = 0;
export const ROLL_HOLED = 1;
export const ROLL_PENALTY = 2;
export const ROLL_OUT_OF_BOUNDS = 3;
export const ROLL_STILL_ROLLING = 4;

const PENALTY = coverCode('penaltyArea');
const OUT = coverCode('outOfBounds');

const ROLLING_GRAVITY = ROLLING_SHARE * GRAVITY_MPS2;
/** Longest piece of roll in one step, metres. */
const LONGEST_M = 1;
/** A rest of the way shorter than this is done at once, on the plane half-way along it. */
const LAST_M = 0.5;
/** Steps shorten to this where the slope bends, m/s^2 of pull against a straight change over the step. */
const SHORTEST_M = 0.3;
const BEND_MPS2 = 0.03;
/** Below this speed a ball that the slope outdoes starts again down the fall line. */
const STALL_MPS = 0.01;
/** A ball that has rolled this long or this far has no rest on this ground. */
const LONGEST_ROLL_S = 300;
const FARTHEST_ROLL_M = 300;
/** Longest piece of a slide. */
const SKID_PIECE_M = 0.3;
/** A ball that has met a wall this often lies against it. */
const MOST_WALLS = 20;
const MOST_STEPS = 1_000_000;
const EDGE_M = 4e-4;

/** Ends a roll at a boundary: marks the entry and tells the outcome, or -1 for ordinary ground. */
function boundary(w: ShotWork, code: number): number {
  if (code !== PENALTY && code !== OUT) return -1;
  w.marks[MARK_ENTRY_EAST] = w.state[X] as number;
  w.marks[MARK_ENTRY_NORTH] = w.state[Y] as number;
  return code === PENALTY ? ROLL_PENALTY : ROLL_OUT_OF_BOUNDS;
}

/** Deceleration by the grass for a ball heading (ux, uy): grain helps it along its way and hinders it against. */
function resistance(w: ShotWork, code: number, ux: number, uy: number): number {
  const a = w.covers.rollingMps2[code] as number;
  return code === 0 ? a * (1 - (w.grainEast * ux + w.grainNorth * uy)) : a;
}

/**
 * From a ball on the ground with a velocity and a spin to one that rolls: sliding friction works on the slip until there
 * is none. On the level the speed left is (5 v + 2 r w) / 7 whatever the friction; the slope adds 5/7 of its pull.
 * A long slide goes in pieces, each over the ground it is on. Returns an outcome, or -1 to roll on.
 */
export function skid(w: ShotWork): number {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  // Speed of the skin at the contact on nearly level ground: v - r w x up.
  let slipX = (s[VX] as number) - BALL_RADIUS_M * (s[WY] as number); // arrays of fixed size, set once in shotWork
  let slipY = (s[VY] as number) + BALL_RADIUS_M * (s[WX] as number);
  for (let piece = 0; piece < MOST_STEPS; piece += 1) {
    const code = here[3] as number;
    const over = boundary(w, code);
    if (over >= 0) return over;
    const slip = Math.sqrt(slipX * slipX + slipY * slipY);
    // Grass that stops a rolling ball harder than friction would stops a sliding one as hard.
    const grip = Math.max(
      (w.covers.friction[code] as number) * GRAVITY_MPS2,
      w.covers.rollingMps2[code] as number,
    );
    const left = (2 * slip) / (7 * grip);
    if (left < 1e-5) return -1;
    const vx = s[VX] as number;
    const vy = s[VY] as number;
    const speed = Math.sqrt(vx * vx + vy * vy);
    const longest = SKID_PIECE_M * w.stepFactor;
    const last = left * Math.max(speed, 0.3 * slip) <= longest;
    let time = last ? left : longest / Math.max(speed, 0.3 * slip);
    w.ground.sample(
      (s[X] as number) + 0.5 * time * (vx - 0.5 * grip * time * (slipX / slip)),
      (s[Y] as number) + 0.5 * time * (vy - 0.5 * grip * time * (slipY / slip)),
      w.probe,
    );
    const pullX = GRAVITY_MPS2 * (w.probe[1] as number);
    const pullY = GRAVITY_MPS2 * (w.probe[2] as number);
    const pull = Math.sqrt(pullX * pullX + pullY * pullY);
    const fade = 3.5 * grip;
    if (last && pull < 0.9 * fade) {
      // On a plane the slip dies exactly as a rolling ball does, and the speed follows it: dv = 2/7 du - 5/7 pull dt.
      time = (fade * slip - (slipX * pullX + slipY * pullY)) / (fade * fade - pull * pull);
      stopDisplacement(slipX, slipY, slip, pullX, pullY, pull, fade, w.scratch);
      n[VX] = vx - (2 / 7) * slipX - ROLLING_SHARE * pullX * time;
      n[VY] = vy - (2 / 7) * slipY - ROLLING_SHARE * pullY * time;
      n[X] =
        (s[X] as number) +
        time * (vx - (2 / 7) * slipX - (ROLLING_SHARE / 2) * pullX * time) +
        (2 / 7) * (w.scratch[0] as number);
      n[Y] =
        (s[Y] as number) +
        time * (vy - (2 / 7) * slipY - (ROLLING_SHARE / 2) * pullY * time) +
        (2 / 7) * (w.scratch[1] as number);
      slipX = 0;
      slipY = 0;
    } else {
      // Friction along the slip half-way through the piece.
      const midX = slipX - 0.5 * time * (fade * (slipX / slip) + pullX);
      const midY = slipY - 0.5 * time * (fade * (slipY / slip) + pullY);
      const mid = Math.max(1e-9, Math.sqrt(midX * midX + midY * midY));
      const rubX = (grip * midX) / mid;
      const rubY = (grip * midY) / mid;
      n[VX] = vx - time * (rubX + pullX);
      n[VY] = vy - time * (rubY + pullY);
      n[X] = (s[X] as number) + 0.5 * (vx + n[VX]) * time;
      n[Y] = (s[Y] as number) + 0.5 * (vy + n[VY]) * time;
      slipX -= time * (3.5 * rubX + pullX);
      slipY -= time * (3.5 * rubY + pullY);
    }
    if (w.obstacles.length > 0 && meetOnGround(w)) {
      // Off a wall the ball rolls: what spin it has left is not known.
      w.ground.sample(s[X] as number, s[Y] as number, here);
      recordRoll(w);
      return -1;
    }
    const met = passHole(w, time);
    if (met === 1) return ROLL_HOLED;
    if (met === 0) {
      recordPiece(w, time);
      s[X] = n[X];
      s[Y] = n[Y];
      s[VX] = n[VX];
      s[VY] = n[VY];
    }
    w.ground.sample(s[X] as number, s[Y] as number, here);
    recordRoll(w);
    // A ball that has met the rim rolls on.
    if (met === 2) return boundary(w, here[3] as number);
  }
  return -1;
}

/** Cubic through both ends with their velocities. */
function between(a: number, va: number, b: number, vb: number, h: number, u: number): number {
  const d = b - a;
  return a + u * (d + (1 - u) * ((h * va - d) * (1 - u) + (d - h * vb) * u));
}

/**
 * Looks whether the piece of path from `state` to `next` crosses the hole. 0: no. 1: the ball dropped. 2: it came out
 * again, and `state` stands beyond the rim with what speed it has left.
 */
function passHole(w: ShotWork, h: number): number {
  if (!w.hasHole) return 0;
  const s = w.state;
  const n = w.next;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const x1 = n[X] as number;
  const y1 = n[Y] as number;
  const hx = w.holeEastM;
  const hy = w.holeNorthM;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const away = (hx - x0) * (hx - x0) + (hy - y0) * (hy - y0);
  const reach = Math.sqrt(dx * dx + dy * dy) * 1.1 + HOLE_RADIUS_M;
  if (away > reach * reach) return 0;
  const vx0 = s[VX] as number;
  const vy0 = s[VY] as number;
  const vx1 = n[VX] as number;
  const vy1 = n[VY] as number;
  // Closest approach: the chord first, then the curve about it.
  const length2 = dx * dx + dy * dy;
  let u = length2 > 0 ? Math.min(1, Math.max(0, ((hx - x0) * dx + (hy - y0) * dy) / length2)) : 0;
  let px = 0;
  let py = 0;
  let vx = 0;
  let vy = 0;
  for (let k = 0; k < 4; k += 1) {
    px = between(x0, vx0, x1, vx1, h, u);
    py = between(y0, vy0, y1, vy1, h, u);
    vx = vx0 + u * (vx1 - vx0);
    vy = vy0 + u * (vy1 - vy0);
    const v2 = vx * vx + vy * vy;
    if (v2 < 1e-12) break;
    const shift = ((hx - px) * vx + (hy - py) * vy) / (v2 * h);
    const to = Math.min(1, Math.max(0, u + shift));
    if (Math.abs(to - u) < 1e-9) break;
    u = to;
  }
  const gx = hx - px;
  const gy = hy - py;
  const apart = Math.sqrt(gx * gx + gy * gy);
  if (apart >= HOLE_RADIUS_M) return 0;
  // Still on its way in: the closest point lies in the next piece.
  if (u >= 1 && gx * vx + gy * vy > 1e-9 && vx * vx + vy * vy > 1e-8) return 0;
  const cross = vx * gy - vy * gx; // positive with the hole to the left
  w.velocity[0] = vx;
  w.velocity[1] = vy;
  if (
    meetHole(w.velocity, cross > 0 ? -apart : apart, w.flagstickIn, w.holeSlopeEast, w.holeSlopeNorth) ===
    CAPTURED
  )
    return 1;
  const wx = w.velocity[0];
  const wy = w.velocity[1];
  const speed = Math.sqrt(wx * wx + wy * wy);
  // Out over the rim along the new line.
  const along = (gx * wx + gy * wy) / speed;
  const out =
    along + Math.sqrt(Math.max(0, HOLE_RADIUS_M * HOLE_RADIUS_M - apart * apart + along * along)) + 1e-6;
  s[X] = px + (out * wx) / speed;
  s[Y] = py + (out * wy) / speed;
  s[VX] = wx;
  s[VY] = wy;
  return 2;
}

function recordRoll(w: ShotWork): void {
  if (w.record !== null)
    w.record.points.push(w.state[X] as number, w.state[Y] as number, w.here[0] as number);
}

/**
 * Rolls the ball from `state` (pure rolling) over the ground to its end. Newton on a rolling sphere: deceleration by the
 * grass along its way and 5/7 g along the slope (Penner 2002, "The physics of putting"; from memory).
 *
 * A step reads the ground half-way and at its end and runs a Runge-Kutta step through that gradient. The last piece is
 * the exact stop of a rolling ball on a plane (see `stopDisplacement`). Covers change at an edge found to 0.4 mm.
 */
export function roll(w: ShotWork): number {
  const s = w.state;
  const n = w.next;
  const here = w.here;
  const probe = w.probe;
  const probe2 = w.probe2;
  const ground = w.ground;
  const scratch = w.scratch;
  const factor = w.stepFactor;
  let elapsed = 0;
  let rolled = 0;
  let longest = LONGEST_M * factor;
  let walls = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const code = here[3] as number;
    const over = boundary(w, code);
    if (over >= 0) return over;
    let vx = s[VX] as number;
    let vy = s[VY] as number;
    let speed = Math.sqrt(vx * vx + vy * vy);
    let gx = ROLLING_GRAVITY * (here[1] as number);
    let gy = ROLLING_GRAVITY * (here[2] as number);
    const slope = Math.sqrt(gx * gx + gy * gy);
    if (speed < STALL_MPS) {
      const a = resistance(w, code, slope > 0 ? -gx / slope : 0, slope > 0 ? -gy / slope : 0);
      if (slope <= a) return dropsAtRest(w);
      vx = (-gx / slope) * STALL_MPS * 1.01;
      vy = (-gy / slope) * STALL_MPS * 1.01;
      s[VX] = vx;
      s[VY] = vy;
      speed = STALL_MPS * 1.01;
    }
    const x = s[X] as number;
    const y = s[Y] as number;
    const a = resistance(w, code, vx / speed, vy / speed);
    // No ball stops in less than v^2 / 2(a + s) of path: only near that is the exact stop worth working out.
    if (slope < 0.97 * a && speed * speed < 4 * LAST_M * factor * (a + slope)) {
      stopDisplacement(vx, vy, speed, gx, gy, slope, a, scratch);
      let dx = scratch[0] as number;
      let dy = scratch[1] as number;
      const far2 = dx * dx + dy * dy;
      if (far2 < LAST_M * LAST_M * factor * factor || speed < 0.02) {
        ground.sample(x + dx / 2, y + dy / 2, probe2);
        let sameCover = probe2[3] === code;
        gx = ROLLING_GRAVITY * (probe2[1] as number);
        gy = ROLLING_GRAVITY * (probe2[2] as number);
        const slope2 = Math.sqrt(gx * gx + gy * gy);
        if (slope2 < 0.97 * a) {
          stopDisplacement(vx, vy, speed, gx, gy, slope2, a, scratch);
          dx = scratch[0] as number;
          dy = scratch[1] as number;
          ground.sample(x + dx, y + dy, probe);
          sameCover = sameCover && probe[3] === code;
          if (sameCover || far2 < 1e-4) {
            n[X] = x + dx;
            n[Y] = y + dy;
            n[VX] = 0;
            n[VY] = 0;
            if (w.obstacles.length > 0 && meetOnGround(w)) {
              ground.sample(s[X] as number, s[Y] as number, here);
              recordRoll(w);
              walls += 1;
              if (walls > MOST_WALLS) return dropsAtRest(w);
              continue;
            }
            const met = passHole(w, stopTime(speed, dx, dy));
            if (met === 1) return ROLL_HOLED;
            if (met === 2) {
              ground.sample(s[X] as number, s[Y] as number, here);
              recordRoll(w);
              continue;
            }
            recordPiece(w, stopTime(speed, dx, dy));
            s[X] = x + dx;
            s[Y] = y + dy;
            s[VX] = 0;
            s[VY] = 0;
            copyGround(probe, here);
            recordRoll(w);
            // A slope that holds no ball sends it on: the next turn of the loop decides.
            continue;
          }
        }
      }
    }
    const h = Math.min(longest / speed, (factor * 0.5 * speed) / (a + slope));
    if (elapsed + h > LONGEST_ROLL_S || rolled > FARTHEST_ROLL_M) return ROLL_STILL_ROLLING;
    // Look at the ground where the ball will be half-way and at the end, near enough.
    const bx = -a * (vx / speed) - gx;
    const by = -a * (vy / speed) - gy;
    gx = ROLLING_GRAVITY * (here[1] as number);
    gy = ROLLING_GRAVITY * (here[2] as number);
    ground.sample(x + h * (vx / 2 + (h * bx) / 8), y + h * (vy / 2 + (h * by) / 8), probe2);
    ground.sample(x + h * (vx + (h * bx) / 2), y + h * (vy + (h * by) / 2), probe);
    rollStep(w, h, a);
    const bend =
      Math.abs(gx + ROLLING_GRAVITY * ((probe[1] as number) - 2 * (probe2[1] as number))) +
      Math.abs(gy + ROLLING_GRAVITY * ((probe[2] as number) - 2 * (probe2[2] as number)));
    longest =
      factor *
      Math.max(
        SHORTEST_M,
        bend > BEND_MPS2 ? (h * speed * 0.6) / factor : Math.min(LONGEST_M, (longest / factor) * 1.5),
      );
    let used = h;
    const midCode = probe2[3] as number;
    if (midCode !== code || probe[3] !== code) {
      used = edgeShare(w, h, code, midCode !== code ? 0.5 : 1) * h;
      cutStep(w, h, used / h);
      ground.sample(n[X] as number, n[Y] as number, probe);
    }
    if (w.obstacles.length > 0 && meetOnGround(w)) {
      ground.sample(s[X] as number, s[Y] as number, here);
      recordRoll(w);
      walls += 1;
      if (walls > MOST_WALLS) return dropsAtRest(w);
      elapsed += used;
      continue;
    }
    const met = passHole(w, used);
    if (met === 1) return ROLL_HOLED;
    if (met === 2) {
      ground.sample(s[X] as number, s[Y] as number, here);
    } else {
      recordPiece(w, used);
      s[X] = n[X] as number;
      s[Y] = n[Y] as number;
      s[VX] = n[VX] as number;
      s[VY] = n[VY] as number;
      copyGround(probe, here);
    }
    recordRoll(w);
    elapsed += used;
    rolled += used * speed;
  }
  return ROLL_STILL_ROLLING;
}

/** By hand: a call of `set` costs as much as a sample of the ground. */
function copyGround(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < 4; i += 1) to[i] = from[i] as number;
}

function dropsAtRest(w: ShotWork): number {
  if (!w.hasHole) return ROLL_AT_REST;
  const dx = w.holeEastM - (w.state[X] as number);
  const dy = w.holeNorthM - (w.state[Y] as number);
  return dx * dx + dy * dy < HOLE_RADIUS_M * HOLE_RADIUS_M ? ROLL_HOLED : ROLL_AT_REST;
}

const stopTime = (speed: number, dx: number, dy: number): number =>
  (2 * Math.sqrt(dx * dx + dy * dy)) / Math.max(speed, 1e-9);

/**
 * Where a ball rolling on a plane stops, from where it is, into out[0..1]: exact, and without a power or an angle.
 * With c and q the cosine and sine of its heading against the fall line, pull s and resistance a > s:
 * down the fall line v^2/8 [(1+c)^2/(a-s) - (1-c)^2/(a+s)], across it v^2 q/2 [(1+c)/(2a-s) + (1-c)/(2a+s)].
 * (Elimination of time from dv/dt = -a + s c, v dphi/dt = -s q; integrals of powers of tan(phi/2).)
 */
export function stopDisplacement(
  vx: number,
  vy: number,
  speed: number,
  gx: number,
  gy: number,
  s: number,
  a: number,
  out: Float64Array,
): void {
  if (s < 1e-9) {
    out[0] = (vx * speed) / (2 * a);
    out[1] = (vy * speed) / (2 * a);
    return;
  }
  const fx = -gx / s;
  const fy = -gy / s;
  const c = (vx * fx + vy * fy) / speed;
  const q = (vy * fx - vx * fy) / speed;
  const v2 = speed * speed;
  const down = (v2 / 8) * (((1 + c) * (1 + c)) / (a - s) - ((1 - c) * (1 - c)) / (a + s));
  const across = ((v2 * q) / 2) * ((1 + c) / (2 * a - s) + (1 - c) / (2 * a + s));
  out[0] = down * fx - across * fy;
  out[1] = down * fy + across * fx;
}

/** Runge-Kutta step of a rolling ball from `state` to `next` through the gradients of `here`, `probe2` half-way and `probe` at the end. */
function rollStep(w: ShotWork, h: number, a: number): void {
  const gx0 = ROLLING_GRAVITY * (w.here[1] as number);
  const gy0 = ROLLING_GRAVITY * (w.here[2] as number);
  const gxm = ROLLING_GRAVITY * (w.probe2[1] as number);
  const gym = ROLLING_GRAVITY * (w.probe2[2] as number);
  const gx1 = ROLLING_GRAVITY * (w.probe[1] as number);
  const gy1 = ROLLING_GRAVITY * (w.probe[2] as number);
  const s = w.state;
  const n = w.next;
  const vx = s[VX] as number;
  const vy = s[VY] as number;
  const half = h / 2;
  let f = a / Math.sqrt(vx * vx + vy * vy);
  const ax1 = -f * vx - gx0;
  const ay1 = -f * vy - gy0;
  let ux = vx + half * ax1;
  let uy = vy + half * ay1;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax2 = -f * ux - gxm;
  const ay2 = -f * uy - gym;
  ux = vx + half * ax2;
  uy = vy + half * ay2;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax3 = -f * ux - gxm;
  const ay3 = -f * uy - gym;
  ux = vx + h * ax3;
  uy = vy + h * ay3;
  f = a / Math.sqrt(ux * ux + uy * uy);
  const ax4 = -f * ux - gx1;
  const ay4 = -f * uy - gy1;
  const sixth = h / 6;
  n[X] = (s[X] as number) + h * (vx + sixth * (ax1 + ax2 + ax3));
  n[Y] = (s[Y] as number) + h * (vy + sixth * (ay1 + ay2 + ay3));
  n[VX] = vx + sixth * (ax1 + 2 * (ax2 + ax3) + ax4);
  n[VY] = vy + sixth * (ay1 + 2 * (ay2 + ay3) + ay4);
}

/** Share of the step at which the ball leaves cover `code`, just beyond the edge; `high` is a share known to be beyond. */
function edgeShare(w: ShotWork, h: number, code: number, high: number): number {
  const s = w.state;
  const n = w.next;
  let low = 0;
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const length = Math.sqrt(dx * dx + dy * dy);
  while ((high - low) * length > EDGE_M) {
    const u = (low + high) / 2;
    w.ground.sample(
      between(s[X] as number, s[VX] as number, n[X] as number, n[VX] as number, h, u),
      between(s[Y] as number, s[VY] as number, n[Y] as number, n[VY] as number, h, u),
      w.probe2,
    );
    if (w.probe2[3] === code) low = u;
    else high = u;
  }
  return high;
}

/** Shortens the step from `state` to `next` to a share of it. */
function cutStep(w: ShotWork, h: number, u: number): void {
  const s = w.state;
  const n = w.next;
  for (let i = 0; i < 2; i += 1) {
    const a = s[i] as number;
    const va = s[i + 3] as number;
    const b = n[i] as number;
    const vb = n[i + 3] as number;
    n[i] = between(a, va, b, vb, h, u);
    n[i + 3] = va + u * (vb - va) + 3 * u * (1 - u) * ((2 * (b - a)) / h - va - vb);
  }
}

/** Marks points within the piece from `state` to `next` for drawing, every 0.15 m or so. */
function recordPiece(w: ShotWork, h: number): void {
  if (w.record === null) return;
  const s = w.state;
  const n = w.next;
  const dx = (n[X] as number) - (s[X] as number);
  const dy = (n[Y] as number) - (s[Y] as number);
  const parts = Math.ceil(Math.sqrt(dx * dx + dy * dy) / 0.15);
  for (let k = 1; k < parts; k += 1) {
    const u = k / parts;
    const px = between(s[X] as number, s[VX] as number, n[X] as number, n[VX] as number, h, u);
    const py = between(s[Y] as number, s[VY] as number, n[Y] as number, n[VY] as number, h, u);
    w.ground.sample(px, py, w.probe2);
    w.record.points.push(px, py, w.probe2[0] as number);
  }
}

/** Sets a ball down: keeps its speed across the ground, drops the rest. */
export function setDown(w: ShotWork): void {
  const s = w.state;
  s[Z] = w.here[0] as number;
  s[VZ] = 0;
  s[WZ] = 0;
}
