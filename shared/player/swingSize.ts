import type { PlayerLevel } from '../atlas/records.ts';
import type { Technique } from '../words/vocabulary.ts';

/** Clubhead speed of a full swing with a short iron, m/s: typical of the level (from memory, rounded). */
export function fullSwingMps(level: PlayerLevel): number {
  if (level.kind === 'tour') return 40;
  if (level.kind === 'beginner') return 29;
  return 38 - 0.2 * Math.min(36, Math.max(0, level.handicap));
}

/**
 * Small, medium or long for this player: under a fifth, under two fifths of a full swing; a putt by its own
 * measure.
 */
export function swingSize(
  level: PlayerLevel,
  technique: Technique,
  clubheadMps: number,
): 'small' | 'medium' | 'long' {
  if (technique === 'putt') return clubheadMps < 1.4 ? 'small' : clubheadMps < 2.6 ? 'medium' : 'long';
  const share = clubheadMps / fullSwingMps(level);
  return share < 0.2 ? 'small' : share < 0.4 ? 'medium' : 'long';
}
