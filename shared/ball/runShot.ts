import { coverCode } from '../words/vocabulary.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { bounce, STATE_SIZE, VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './bounce.ts';
import { HOLE_RADIUS_M } from './constants.ts';
import { fly } from './fly.ts';
import { roll } from './roll.ts';
import { ROLL_HOLED, ROLL_OUT_OF_BOUNDS, ROLL_PENALTY, ROLL_STILL_ROLLING } from './rollEnd.ts';
import { outcomes } from './shot.ts';
import { MARK_APEX, MARK_ENTRY_EAST, MARK_ENTRY_NORTH, MARK_OBSTRUCTED, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';
import { setDown, skid } from './skid.ts';
import { MET_BANK, MET_LIP, NOTHING_IN_THE_WAY, slots } from './slots.ts';

const { state: s, here, marks } = shotMemory;

/** A ball rising slower than this off the ground stays on it: a hop of a hundredth of a millimetre. */
const LEAST_HOP_MPS = 0.015;
const MOST_HOPS = 40;

const AT_REST = outcomes.indexOf('atRest');
const HOLED = outcomes.indexOf('holed');
const PENALTY_AREA = outcomes.indexOf('penaltyArea');
const OUT_OF_BOUNDS = outcomes.indexOf('outOfBounds');
const STILL_ROLLING = outcomes.indexOf('stillRolling');
const PENALTY_CODE = coverCode('penaltyArea');
const OUT_CODE = coverCode('outOfBounds');
const SAND_CODE = coverCode('bunker');

function outcomeOfRoll(code: number): number {
  if (code === ROLL_PENALTY) return PENALTY_AREA;
  if (code === ROLL_OUT_OF_BOUNDS) return OUT_OF_BOUNDS;
  if (code === ROLL_STILL_ROLLING) return STILL_ROLLING;
  return code === ROLL_HOLED ? HOLED : AT_REST;
}

/** Puts the ball on the ground at the start. */
function place(w: ShotWork, eastM: number, northM: number, out: Float64Array): void {
  s[X] = eastM;
  s[Y] = northM;
  w.ground.sample(s, here);
  s[Z] = here[0] as number; // arrays of fixed size, set once in shotMemory
  marks[MARK_APEX] = here[0] as number;
  marks[MARK_OBSTRUCTED] = NOTHING_IN_THE_WAY;
  marks[MARK_ENTRY_EAST] = NaN;
  marks[MARK_ENTRY_NORTH] = NaN;
  out[slots.landingEastM] = eastM;
  out[slots.landingNorthM] = northM;
  out[slots.carryM] = 0;
  out[slots.bounces] = 0;
  out[slots.landingHeightM] = here[0] as number;
  out[slots.landingCover] = here[3] as number;
  if (w.record !== null) w.record.points.push(eastM, northM, here[0] as number);
}

/**
 * Whether the ball, at its first touch of the ground, has flown into a bunker's face or into a bank. A bank counts that
 * rises by more than so much along the way, met before the ball comes down at 45 degrees. Where the line lies is assumed.
 */
const STEEP_FACE = 0.4;
const STEEP_BANK = 0.3;
function groundInTheWay(): number {
  const vx = s[VX] as number; // arrays of fixed size, set once in shotMemory
  const vy = s[VY] as number;
  const across = Math.sqrt(vx * vx + vy * vy);
  const rise = (here[1] as number) * vx + (here[2] as number) * vy;
  if (here[3] === SAND_CODE) return rise > STEEP_FACE * across ? MET_LIP : NOTHING_IN_THE_WAY;
  return rise > STEEP_BANK * across && (s[VZ] as number) > -across ? MET_BANK : NOTHING_IN_THE_WAY;
}

function finish(w: ShotWork, startHeightM: number, outcome: number, out: Float64Array): number {
  if (outcome === HOLED) {
    s[X] = w.holeEastM;
    s[Y] = w.holeNorthM;
    w.ground.sample(s, here);
    if (w.record !== null) w.record.points.push(w.holeEastM, w.holeNorthM, here[0] as number);
  }
  out[slots.restEastM] = s[X] as number;
  out[slots.restNorthM] = s[Y] as number;
  out[slots.restHeightM] = here[0] as number;
  out[slots.apexM] = (marks[MARK_APEX] as number) - startHeightM;
  out[slots.entryEastM] = marks[MARK_ENTRY_EAST] as number;
  out[slots.entryNorthM] = marks[MARK_ENTRY_NORTH] as number;
  out[slots.obstructed] = marks[MARK_OBSTRUCTED] as number;
  out[slots.restCover] = here[3] as number;
  return outcome;
}

/** Rolls from the state as it stands, skidding first, and closes the shot. */
function runOut(w: ShotWork, startHeightM: number, out: Float64Array): number {
  setDown();
  if (w.record !== null) w.record.rollFrom = w.record.points.length / 3 - 1;
  const skidded = skid(w);
  return finish(w, startHeightM, outcomeOfRoll(skidded >= 0 ? skidded : roll(w)), out);
}

/** A full shot from the ground, `launch` holding velocity and spin; fills `out` and returns an index into `outcomes`. */
export function runShot(
  w: ShotWork,
  startEastM: number,
  startNorthM: number,
  launch: Float64Array,
  out: Float64Array,
): number {
  place(w, startEastM, startNorthM, out);
  const startHeightM = here[0] as number;
  for (let i = 0; i < 6; i += 1) s[i + 3] = launch[i] as number;
  for (let hop = 0; hop < MOST_HOPS; hop += 1) {
    const rising =
      (s[VZ] as number) - (here[1] as number) * (s[VX] as number) - (here[2] as number) * (s[VY] as number);
    if (rising <= LEAST_HOP_MPS) break;
    if (!fly(w)) return finish(w, startHeightM, STILL_ROLLING, out);
    const code = here[3] as number;
    if (hop === 0) {
      const dx = (s[X] as number) - startEastM;
      const dy = (s[Y] as number) - startNorthM;
      out[slots.landingEastM] = s[X] as number;
      out[slots.landingNorthM] = s[Y] as number;
      out[slots.carryM] = Math.sqrt(dx * dx + dy * dy);
      out[slots.landingHeightM] = here[0] as number;
      out[slots.landingCover] = code;
      if (marks[MARK_OBSTRUCTED] === NOTHING_IN_THE_WAY) marks[MARK_OBSTRUCTED] = groundInTheWay();
    }
    if (w.record !== null) w.record.touchdowns.push(w.record.points.length / 3 - 1);
    out[slots.bounces] = hop + 1;
    if (code === PENALTY_CODE || code === OUT_CODE) {
      marks[MARK_ENTRY_EAST] = s[X] as number;
      marks[MARK_ENTRY_NORTH] = s[Y] as number;
      return finish(w, startHeightM, code === PENALTY_CODE ? PENALTY_AREA : OUT_OF_BOUNDS, out);
    }
    if (w.hasHole) {
      // A ball that comes down wholly inside the rim drops.
      const dx = w.holeEastM - (s[X] as number);
      const dy = w.holeNorthM - (s[Y] as number);
      if (dx * dx + dy * dy < 0.36 * HOLE_RADIUS_M * HOLE_RADIUS_M)
        return finish(w, startHeightM, HOLED, out);
    }
    if (w.covers.restitution[code] === 0) {
      // Soft sand: the ball stays where it plugs, or runs down a face too steep to hold it.
      for (let i = 3; i < STATE_SIZE; i += 1) s[i] = 0;
      break;
    }
    bounce(s, here, w.covers);
    s[Z] = here[0] as number;
  }
  return runOut(w, startHeightM, out);
}

/** A ball that rolls from the start without slipping. */
export function runRoll(
  w: ShotWork,
  startEastM: number,
  startNorthM: number,
  speedMps: number,
  bearingRad: number,
  out: Float64Array,
): number {
  place(w, startEastM, startNorthM, out);
  s[VX] = speedMps * sin(bearingRad);
  s[VY] = speedMps * cos(bearingRad);
  s[VZ] = 0;
  s[WX] = 0;
  s[WY] = 0;
  s[WZ] = 0;
  if (w.record !== null) w.record.rollFrom = 0;
  return finish(w, here[0] as number, outcomeOfRoll(roll(w)), out);
}
