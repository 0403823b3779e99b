import type { Club, PlayerLevel } from '../atlas/records.ts';
import type { Technique } from '../words/vocabulary.ts';

/** Clubhead speed of a full swing with a short iron, m/s: typical of the level (from memory, rounded). */
export function fullSwingMps(level: PlayerLevel): number {
  if (level.kind === 'tour') return 40;
  if (level.kind === 'beginner') return 29;
  return 38 - 0.2 * Math.min(36, Math.max(0, level.handicap));
}

/** Strokes that measured carries speak for: a face laid open or a cushion of sand takes the carry from the swing. */
export const carriesSpeakFor: readonly Technique[] = ['bumpAndRun', 'chip', 'pitch'];

/**
 * Small, medium or long for this player. Where the club's carries were measured, the one nearest to the carry wanted;
 * else by speed: under a fifth, under two fifths of a full swing. A putt goes by its own measure.
 */
export function swingSize(
  level: PlayerLevel,
  technique: Technique,
  clubheadMps: number,
  carriesM: Club['carriesM'],
  carryM: number,
): 'small' | 'medium' | 'long' {
  if (technique === 'putt') return clubheadMps < 1.4 ? 'small' : clubheadMps < 2.6 ? 'medium' : 'long';
  if (carriesM !== undefined && carriesSpeakFor.includes(technique)) {
    const { smallM, mediumM, longM } = carriesM;
    if (carryM < (smallM + mediumM) / 2) return 'small';
    return carryM < (mediumM + longM) / 2 ? 'medium' : 'long';
  }
  const share = clubheadMps / fullSwingMps(level);
  return share < 0.2 ? 'small' : share < 0.4 ? 'medium' : 'long';
}
