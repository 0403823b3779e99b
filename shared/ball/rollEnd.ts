import { coverCode } from '../words/vocabulary.ts';
import { X, Y } from './bounce.ts';
import { HOLE_RADIUS_M } from './constants.ts';
import { MARK_ENTRY_EAST, MARK_ENTRY_NORTH, shotMemory } from './shotMemory.ts';
import type { ShotWork } from './shotWork.ts';

const { state, marks } = shotMemory;

/** How a roll can end. */
export const ROLL_AT_REST = 0;
export const ROLL_HOLED = 1;
export const ROLL_PENALTY = 2;
export const ROLL_OUT_OF_BOUNDS = 3;
export const ROLL_STILL_ROLLING = 4;

const PENALTY = coverCode('penaltyArea');
const OUT = coverCode('outOfBounds');

/** Ends a roll at a boundary: marks the entry and tells the outcome, or -1 for ordinary ground. */
export function boundary(code: number): number {
  if (code !== PENALTY && code !== OUT) return -1;
  marks[MARK_ENTRY_EAST] = state[X] as number;
  marks[MARK_ENTRY_NORTH] = state[Y] as number;
  return code === PENALTY ? ROLL_PENALTY : ROLL_OUT_OF_BOUNDS;
}

/** A ball that stops, within the rim or on the ground. */
export function dropsAtRest(w: ShotWork): number {
  if (!w.hasHole) return ROLL_AT_REST;
  const dx = w.holeEastM - (state[X] as number);
  const dy = w.holeNorthM - (state[Y] as number);
  return dx * dx + dy * dy < HOLE_RADIUS_M * HOLE_RADIUS_M ? ROLL_HOLED : ROLL_AT_REST;
}
