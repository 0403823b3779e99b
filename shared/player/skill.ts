import type { PlayerLevel } from '../atlas/records.ts';

/** How a level stands to a tour player: factors on the spreads and the share of badly struck shots. */
export interface Skill {
  /** On both putting spreads. */
  readonly putting: number;
  /** On the core spreads of every other technique. */
  readonly shortGame: number;
  /** Share of heavy and of thin strikes from a clean, ordinary lie. */
  readonly heavyShare: number;
  readonly thinShare: number;
}

const TOUR: Skill = { putting: 1, shortGame: 1, heavyShare: 0.006, thinShare: 0.004 };

/**
 * Tour; then a handicap, continuous from 0 to 36 and held at the ends; then a beginner.
 *
 * Putting factors 1.22 (scratch) and 1.60 (a 90s golfer, handicap 18) were fitted to Broadie's make percentages
 * from 5 ft (computed; the percentages from memory). The short-game factor and the shares of bad strikes come
 * from tests/published/fit/strikeSpread.ts, which fits them to the proximity of club golfers from 60 yd.
 */
export function skillOf(level: PlayerLevel): Skill {
  if (level.kind === 'tour') return TOUR;
  if (level.kind === 'beginner') return { putting: 2.3, shortGame: 3.1, heavyShare: 0.16, thinShare: 0.12 };
  const h = Math.min(36, Math.max(0, level.handicap));
  return {
    putting: 1.22 + (0.38 / 18) * h,
    shortGame: 1.2 + 0.045 * h,
    heavyShare: 0.012 + 0.0035 * h,
    thinShare: 0.008 + 0.0025 * h,
  };
}

/** The next better level, for asking what a better player would choose. Null for tour. */
export function nextLevel(level: PlayerLevel): PlayerLevel | null {
  if (level.kind === 'tour') return null;
  if (level.kind === 'beginner') return { kind: 'handicap', handicap: 36 };
  if (level.handicap <= 0) return { kind: 'tour' };
  return { kind: 'handicap', handicap: Math.max(0, level.handicap - 9) };
}
