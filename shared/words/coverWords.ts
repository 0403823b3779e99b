import type { AreaKind } from './vocabulary.ts';

/** The kinds of ground as the trade says them of what a ball lies on or rolls over. */
export const coverWords: Readonly<Record<AreaKind, string>> = {
  green: 'green',
  fringe: 'fringe',
  approach: 'approach',
  fairway: 'fairway',
  lightRough: 'light rough',
  heavyRough: 'heavy rough',
  bare: 'bare ground',
  bunker: 'sand',
  penaltyArea: 'penalty area',
  outOfBounds: 'out of bounds',
  path: 'path',
  tree: 'tree',
  tee: 'tee',
};

/** The same as the names of what is traced: the bunker, not the sand in it. */
export const kindWords: Readonly<Record<AreaKind, string>> = { ...coverWords, bunker: 'bunker' };
