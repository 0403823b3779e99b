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
  /** 1 if it met a crown or a wall on the way. */
  obstructed: 9,
  restCover: 10,
  /** Height of the ground at the landing spot and at rest. */
  landingHeightM: 11,
  restHeightM: 12,
  /** Cover at the landing spot. */
  landingCover: 13,
} as const;
export const SLOT_COUNT = 14;
