/** The closed vocabularies of the trade that every layer shares. Order within a list is meaningful where said. */

/** Kinds of area a person can trace. */
export const areaKinds = [
  'green',
  'fringe',
  'approach',
  'fairway',
  'lightRough',
  'heavyRough',
  'bare',
  'bunker',
  'penaltyArea',
  'outOfBounds',
  'path',
  'tree',
  'tee',
] as const;
export type AreaKind = (typeof areaKinds)[number];

/** What a ball can lie on or roll over, in the order of its code. A tree is an obstacle above some cover. */
export const covers = [
  'green',
  'fringe',
  'approach',
  'fairway',
  'lightRough',
  'heavyRough',
  'bare',
  'bunker',
  'penaltyArea',
  'outOfBounds',
  'path',
  'tee',
] as const;
export type Cover = (typeof covers)[number];

/** Position of a cover in `covers`: what hot loops carry. */
export type CoverCode = number;
export const coverCode = (cover: Cover): CoverCode => covers.indexOf(cover);

export const lieQualities = ['clean', 'sittingUp', 'sittingDown', 'buried', 'divot'] as const;
export type LieQuality = (typeof lieQualities)[number];

/** How much a putting surface's grass leans one way. */
export const grainStrengths = ['slight', 'strong'] as const;
export type GrainStrength = (typeof grainStrengths)[number];

export const moistures = ['dry', 'damp', 'wet'] as const;
export type Moisture = (typeof moistures)[number];

/** Simplest first: the order in which a simple shot is preferred. */
export const techniques = ['putt', 'bumpAndRun', 'chip', 'pitch', 'splash', 'explosion', 'highSoft'] as const;
export type Technique = (typeof techniques)[number];

export const clubKinds = ['putter', 'wedge', 'iron', 'hybrid', 'wood'] as const;
export type ClubKind = (typeof clubKinds)[number];
