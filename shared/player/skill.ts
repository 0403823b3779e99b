import type { PlayerLevel } from '../atlas/records.ts';

/** How a level stands to a tour player: factors on the spreads and the share of badly struck shots. */
export interface Skill {
  /** On a putt's errors: line of the stroke; pace, struck and judged; slope read across the line. */
  readonly putting: { readonly line: number; readonly pace: number; readonly read: number };
  /** On the core spreads of every other technique. */
  readonly shortGame: number;
  /** Share of heavy and of thin strikes from a clean, ordinary lie. */
  readonly heavyShare: number;
  readonly thinShare: number;
}

const TOUR: Skill = {
  putting: { line: 1, pace: 1, read: 1 },
  shortGame: 1,
  heavyShare: 0.006,
  thinShare: 0.004,
};

/**
 * Tour; then a handicap, continuous from 0 to 36 and held at the ends; then a beginner.
 *
 * Putting factors of scratch and of a 90s golfer, handicap 18, are fitted by tests/published/fit/putting.ts to
 * Broadie's make percentages by level (from memory) and to what is known of pace; they lie on a straight line by
 * handicap, and a beginner's beyond it by judgement. One-putts say that the weaker player lacks above all the reading.
 * The short-game factor and the shares of bad strikes are set by hand, so that a club golfer leaves what ten of them left
 * from 60 yd (tests/published/player.checks.ts).
 */
export function skillOf(level: PlayerLevel): Skill {
  if (level.kind === 'tour') return TOUR;
  if (level.kind === 'beginner') {
    return {
      putting: { line: 1.6, pace: 2.1, read: 3.6 },
      shortGame: 3.1,
      heavyShare: 0.16,
      thinShare: 0.12,
    };
  }
  const h = Math.min(36, Math.max(0, level.handicap));
  return {
    putting: { line: 1.25, pace: 1.04 + (0.34 / 18) * h, read: 1.19 + (0.9 / 18) * h },
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
