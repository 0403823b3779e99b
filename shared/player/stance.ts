import type { Technique } from '../words/vocabulary.ts';

/** How somebody stands to a shot, seen from above. Common practice of coaching, for drawing it; nothing is computed from it. */
export interface Stance {
  /** The ball between the feet: -1 at the back foot, 0 in the middle, 1 at the front foot. */
  readonly ballForward: number;
  /** Share of the weight on the front foot. */
  readonly frontShare: number;
  /** Feet turned open of the line, degrees. */
  readonly openDeg: number;
  /** Middles of the feet apart, in widths of a foot. */
  readonly feetApart: number;
}

export const stances: Readonly<Record<Technique, Stance>> = {
  putt: { ballForward: 0.35, frontShare: 0.5, openDeg: 0, feetApart: 3 },
  bumpAndRun: { ballForward: -0.5, frontShare: 0.65, openDeg: 5, feetApart: 1.8 },
  chip: { ballForward: -0.5, frontShare: 0.65, openDeg: 8, feetApart: 1.5 },
  pitch: { ballForward: 0, frontShare: 0.55, openDeg: 8, feetApart: 2.6 },
  splash: { ballForward: 0.6, frontShare: 0.6, openDeg: 12, feetApart: 3.4 },
  explosion: { ballForward: 0, frontShare: 0.7, openDeg: 0, feetApart: 3.2 },
  highSoft: { ballForward: 0.6, frontShare: 0.5, openDeg: 12, feetApart: 3.2 },
};
