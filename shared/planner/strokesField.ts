import { coverCode } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import type { MissPrices } from './missPrices.ts';

/** Strokes to hole out from wherever a shot leaves the ball, for one flag. */
export interface StrokesField {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/** On the green and its fringe: the map of the green. Elsewhere: what misses cost. */
export const strokesField = (map: GreenMap, misses: MissPrices): StrokesField => ({
  at: (eastM, northM, code) =>
    code === GREEN || code === FRINGE ? map.strokesAt(eastM, northM) : misses.at(eastM, northM, code),
});
