import type { Technique } from '../words/vocabulary.ts';

interface Shape {
  readonly mostCarryM: number;
  /** Shortest carry, metres, and smallest and largest share of the way that it flies. */
  readonly leastCarryM: number;
  readonly leastShare: number;
  readonly mostShare: number;
  /** Below this carry a name is not a matter of shares: any little shot over the fringe flies most of the way. */
  readonly sharesFromM: number;
}

/**
 * What the trade calls by a name (common practice, with room on both sides): a bump-and-run is up to half in the
 * air, a chip a third to two thirds and no more than some twelve yards, what flies farther is a pitch.
 */
const shapes: Partial<Record<Technique, Shape>> = {
  bumpAndRun: { leastCarryM: 0, mostCarryM: 16, leastShare: 0, mostShare: 0.55, sharesFromM: 3 },
  chip: { leastCarryM: 0, mostCarryM: 11, leastShare: 0, mostShare: 0.67, sharesFromM: 4 },
  pitch: { leastCarryM: 6, mostCarryM: Infinity, leastShare: 0.45, mostShare: 1, sharesFromM: 0 },
};
/** From this carry a shot is a pitch however much it runs. */
const PITCH_CARRY_M = 11;

/**
 * Whether a shot of this carry and run goes by the technique's name. `slack` widens every bound, as a share: an
 * aim that the search has moved keeps the name it began with.
 */
export function fitsName(technique: Technique, carryM: number, runM: number, slack = 0): boolean {
  const shape = shapes[technique];
  if (shape === undefined) return true;
  const share = carryM / Math.max(0.1, carryM + runM);
  if (carryM > shape.mostCarryM * (1 + slack) || carryM < shape.leastCarryM * (1 - slack)) return false;
  if (technique === 'pitch' && carryM >= PITCH_CARRY_M) return true;
  if (carryM < shape.sharesFromM) return true;
  return share <= shape.mostShare * (1 + slack) && share >= shape.leastShare * (1 - slack);
}
