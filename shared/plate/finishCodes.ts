import { coverCode } from '../words/vocabulary.ts';

export const holedCode = 254;
const lostCode = 255;

const troubleCodes: ReadonlySet<number> = new Set([
  coverCode('bunker'),
  coverCode('penaltyArea'),
  coverCode('outOfBounds'),
  coverCode('heavyRough'),
  lostCode,
]);

/** Whether a finish code is one the drawing marks with a cross. */
export const isTroubleFinish = (code: number): boolean => troubleCodes.has(code);
