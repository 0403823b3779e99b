import { STATE_SIZE, VX, VY, VZ, X, Y, Z } from './bounce.ts';
import { GRAVITY_MPS2 } from './constants.ts';
import { cutFlight, flightStep, hopStep } from './flightStep.ts';
import type { FlightNotes } from './ground.ts';
import { hermite } from './hermite.ts';
import { CLEAR_SEEN, lookForGround, MET_GROUND } from './lookForGround.ts';
import { anyNear, meetObstacles } from './obstacles.ts';
import { CONTACT_S, MARK_APEX, STEP_S, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state: s, next: n, here, times, marks } = shotMemory;

const LONGEST_STEP_S = 0.3;
/** Longest step in seconds, and in metres along the way. */
const LONGEST_STEP_M = 4;
/** A shorter step is taken by the midpoint rule. */
const MIDPOINT_M = 0.6;
/** A step bends by less than this from its straight start. */
const BESIDE_M = 0.5;
/** Longest way of a step beside a crown or a wall, so that its straight chord is the flight. */
const BESIDE_OBSTACLE_M = 0.25;
const MOST_STEPS = 100_000;
/** A flight lower than this under its start is lost. */
const LOST_BELOW_M = 500;

/**
 * Flies the ball from `state` until it meets the ground; leaves it there, with the ground under it in `here`.
 * Needs `here` at the start. Returns false if the ball is lost below the ground for good.
 */
export function fly(w: ShotWork): boolean {
  const ground = w.ground;
  const lost = (s[Z] as number) - LOST_BELOW_M;
  let known = true;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const vx = s[VX] as number;
    const vy = s[VY] as number;
    const vz = s[VZ] as number;
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    let longest = Math.min(LONGEST_STEP_S, LONGEST_STEP_M / (speed + 0.1));
    if (step === 0) {
      // A hop is over when its parabola over the plane under it is, or soon after.
      const rising = vz - (here[1] as number) * vx - (here[2] as number) * vy;
      longest = Math.min(longest, (2.2 / GRAVITY_MPS2) * rising + 0.002);
    }
    let h = w.stepFactor * longest;
    const x = s[X] as number;
    const y = s[Y] as number;
    const near = w.obstacles.length > 0 && anyNear(w, x, y, x + h * vx, y + h * vy, BESIDE_M);
    if (near) h = Math.min(h, BESIDE_OBSTACLE_M / (speed + 0.1));
    times[STEP_S] = h;
    if (w.reads !== null) noteFlight(w.reads);
    if (h * speed < w.stepFactor * MIDPOINT_M) hopStep(w);
    else flightStep(w);
    if (near && meetObstacles(w)) {
      known = false;
      continue;
    }
    noteApex();
    if (staysAbove(w)) {
      advance(w);
      known = false;
      continue;
    }
    if (!known) ground.sample(s, here);
    const found = lookForGround(w);
    if (found === MET_GROUND) {
      if (w.record !== null) recordFlight(w, (times[CONTACT_S] as number) / times[STEP_S]);
      cutFlight();
      // The last look was within a millimetre of the contact: the plane through it is there, its height is the ball's.
      here[0] = s[Z] as number;
      return true;
    }
    advance(w);
    known = found === CLEAR_SEEN;
    if ((s[Z] as number) < lost) return false;
  }
  return false;
}

/** Notes the blocks under a straight way: an obstacle whose box, widened by `BESIDE_M`, meets none of them changes nothing. */
function noteFlight(notes: FlightNotes): void {
  const h = times[STEP_S] as number;
  const x0 = s[X] as number;
  const y0 = s[Y] as number;
  const x1 = x0 + h * (s[VX] as number);
  const y1 = y0 + h * (s[VY] as number);
  const { into, westM, southM, airPerM, airColumns, airRows, airFrom } = notes;
  const fromColumn = within((x0 - westM) * airPerM, airColumns);
  const toColumn = within((x1 - westM) * airPerM, airColumns);
  const fromRow = within((y0 - southM) * airPerM, airRows);
  const toRow = within((y1 - southM) * airPerM, airRows);
  into[airFrom + toRow * airColumns + toColumn] = 1;
  if (fromColumn === toColumn && fromRow === toRow) return;
  const east = Math.max(fromColumn, toColumn);
  const north = Math.max(fromRow, toRow);
  for (let row = Math.min(fromRow, toRow); row <= north; row += 1) {
    for (let column = Math.min(fromColumn, toColumn); column <= east; column += 1) {
      into[airFrom + row * airColumns + column] = 1;
    }
  }
}

const within = (blocks: number, count: number): number => Math.min(count - 1, Math.max(0, blocks | 0));

/** Whether the step between `state` and `next` is above all ground under it. */
function staysAbove({ maxHeightM, ceiling }: ShotWork): boolean {
  const lowest = Math.min(s[Z] as number, n[Z] as number);
  if (lowest > maxHeightM) return true;
  if (ceiling === null) return false;
  const { westM, southM, perM, columns, rows, heightsM } = ceiling;
  const x0 = ((s[X] as number) - westM) * perM;
  const y0 = ((s[Y] as number) - southM) * perM;
  const x1 = ((n[X] as number) - westM) * perM;
  const y1 = ((n[Y] as number) - southM) * perM;
  const west = Math.min(x0, x1);
  const south = Math.min(y0, y1);
  const east = Math.max(x0, x1);
  const north = Math.max(y0, y1);
  if (!(west >= 0 && south >= 0 && east < columns && north < rows)) return false;
  for (let row = south | 0; row <= north; row += 1) {
    for (let column = west | 0; column <= east; column += 1) {
      if (lowest <= (heightsM[row * columns + column] as number)) return false;
    }
  }
  return true;
}

/** Marks the top of a step, taken as that of a parabola from its two ends. */
function noteApex(): void {
  const v0 = s[VZ] as number;
  const v1 = n[VZ] as number;
  let top = Math.max(s[Z] as number, n[Z] as number);
  if (v0 > 0 && v1 <= 0)
    top = hermite(s[Z] as number, v0, n[Z] as number, v1, times[STEP_S] as number, v0 / (v0 - v1));
  if (top > (marks[MARK_APEX] as number)) marks[MARK_APEX] = top;
}

function advance(w: ShotWork): void {
  if (w.record !== null) recordFlight(w, 1);
  for (let i = 0; i < STATE_SIZE; i += 1) s[i] = n[i] as number;
}

function recordFlight(w: ShotWork, until: number): void {
  const h = times[STEP_S] as number;
  const points = (w.record as NonNullable<typeof w.record>).points; // called only while recording
  const parts = Math.max(1, Math.ceil((until * h) / 0.04));
  for (let k = 1; k <= parts; k += 1) {
    const u = (until * k) / parts;
    for (let i = 0; i < 3; i += 1) {
      points.push(hermite(s[i] as number, s[i + 3] as number, n[i] as number, n[i + 3] as number, h, u));
    }
  }
}
