/** What `ShotSimulator.run` and `roll` write, by index into their output. Metres, plane coordinates. */
export const slots = {
  restEastM: 0,
  restNorthM: 1,
  landingEastM: 2,
  landingNorthM: 3,
  carryM: 4,
  /** Top of the flight above the start. */
  apexM: 5,
  bounces: 6,
  /** Where the ball went into a penalty area or out of bounds; NaN otherwise. */
  entryEastM: 7,
  entryNorthM: 8,
  /** What stood in its way, by code: see `MET_OBSTACLE` and those with it. */
  obstructed: 9,
  restCover: 10,
  /** Height of the ground at the landing spot and at rest. */
  landingHeightM: 11,
  restHeightM: 12,
  /** Cover at the landing spot. */
  landingCover: 13,
} as const;
export const SLOT_COUNT = 14;

/** Codes of `slots.obstructed`. */
export const NOTHING_IN_THE_WAY = 0;
/** A crown or a wall. */
export const MET_OBSTACLE = 1;
/** It flew into the face of a bunker. */
export const MET_LIP = 2;
/** It flew into rising ground before it came down: a bank in the way, unless it was meant to be. */
export const MET_BANK = 3;
