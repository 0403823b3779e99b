import type { PlayerLevel } from '../atlas/records.ts';
import type { Cover } from '../words/vocabulary.ts';
import { skillOf } from './skill.ts';

/**
 * Tour strokes to hole out by distance in yards (Broadie 2012, 2014; from memory). The planner uses these only
 * where its own simulation ends: two misses deep, and beyond the surveyed green.
 */
const YARDS = [0, 10, 20, 30, 40, 50, 60, 80, 100] as const;
const FAIRWAY = [1.9, 2.18, 2.4, 2.52, 2.6, 2.66, 2.7, 2.75, 2.8] as const;
const ROUGH = [2.1, 2.34, 2.59, 2.7, 2.78, 2.87, 2.91, 2.96, 3.02] as const;
const SAND = [2.35, 2.43, 2.53, 2.66, 2.82, 2.92, 3.15, 3.24, 3.23] as const;

function column(cover: Cover): readonly number[] {
  if (cover === 'bunker') return SAND;
  return cover === 'lightRough' || cover === 'heavyRough' || cover === 'path' ? ROUGH : FAIRWAY;
}

/** A smooth stand-in for strokes to hole out from off the green, by cover, distance and level. */
export function baselineStrokes(level: PlayerLevel, cover: Cover, distanceM: number): number {
  const yards = Math.min(100, distanceM / 0.9144);
  let i = 1;
  while (i < YARDS.length - 1 && yards > (YARDS[i] ?? 0)) i += 1;
  const x0 = YARDS[i - 1] ?? 0;
  const x1 = YARDS[i] ?? 1;
  const row = column(cover);
  const y0 = row[i - 1] ?? 0;
  const y1 = row[i] ?? 0;
  const tour = y0 + ((y1 - y0) * (yards - x0)) / (x1 - x0) + (cover === 'heavyRough' ? 0.2 : 0);
  // A wider spread costs about in proportion beyond the two strokes that every level needs.
  return tour + 0.42 * (skillOf(level).shortGame - 1);
}

/** Tour putts by distance in feet (Broadie; part found, part from memory): see references in tests/published. */
const FEET = [0, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 40, 50, 60, 90, 120] as const;
const PUTTS = [
  1, 1.01, 1.04, 1.13, 1.23, 1.34, 1.5, 1.61, 1.78, 1.87, 1.98, 2.06, 2.14, 2.21, 2.4, 2.58,
] as const;

/** A stand-in for putts from a distance on level ground, where no map of the green reaches. */
export function baselinePutts(level: PlayerLevel, distanceM: number): number {
  // A player whose errors are k times as wide sees a putt about as a tour player sees one k times as long.
  const { line, pace, read } = skillOf(level).putting;
  const feet = Math.min(120, ((distanceM / 0.3048) * (line + pace + read)) / 3);
  let i = 1;
  while (i < FEET.length - 1 && feet > (FEET[i] ?? 0)) i += 1;
  const x0 = FEET[i - 1] ?? 0;
  const y0 = PUTTS[i - 1] ?? 1;
  return y0 + (((PUTTS[i] ?? y0) - y0) * (feet - x0)) / ((FEET[i] ?? 1) - x0);
}
