import type { AreaKind } from '../words/vocabulary.ts';

/** The kinds of ground as the trade says them. */
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
