import { MOTION_SIZE } from './aerodynamics.ts';
import { STATE_SIZE } from './bounce.ts';
import { STOP_SIZE } from './stopDisplacement.ts';

/** Room of one array in the memory, numbers. */
const ROOM = 16;
const memory = new Float64Array(16 * ROOM);
let used = 0;

function room(size: number): Float64Array {
  const from = used;
  used += ROOM;
  return memory.subarray(from, from + size);
}

/**
 * What the phases of the shot under way read and write, the same for all simulators of a thread: they take turns. Hot code
 * binds these once, as constants of its module: engines then know where each entry lies and ask nothing at run time, as
 * long as the memory is larger than what they keep in their own heap.
 */
export const shotMemory = {
  /** Ball: see the indices in `bounce`. */
  state: room(STATE_SIZE),
  /** Ball at the end of the step under way. */
  next: room(STATE_SIZE),
  /** What `aerodynamicAcceleration` is asked at the stage of a flight step under way, and what it answers, m/s^2. */
  motion: room(MOTION_SIZE),
  acceleration: room(3),
  /** Acceleration at the start and at the end of that step, m/s^2. */
  endsMps2: room(6),
  /** Ground under the ball: height, gradient, cover code. */
  here: room(4),
  probe: room(4),
  probe2: room(4),
  /** A point that the ground is asked about. */
  at: room(2),
  /** The step under way: how long it is and when in it the ball meets the ground, seconds (`STEP_S`, `CONTACT_S`). */
  times: room(2),
  /** What slows a ball that rolls on the cover it is on: the grass, and the pull of the grain east and north, m/s^2. */
  slowing: room(3),
  /** What `stopDisplacement` is asked and answers. */
  stop: room(STOP_SIZE),
  velocity: room(2),
  /** See `MARK_APEX` and the others. */
  marks: room(4),
} as const;

export const STEP_S = 0;
export const CONTACT_S = 1;

/** Highest point so far; what was in the way (`slots.obstructed`); entry into a penalty area or out of bounds. */
export const MARK_APEX = 0;
export const MARK_OBSTRUCTED = 1;
export const MARK_ENTRY_EAST = 2;
export const MARK_ENTRY_NORTH = 3;
