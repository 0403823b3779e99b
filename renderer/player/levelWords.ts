import type { PlayerLevel } from '../../shared/atlas/records.ts';

/** "handicap 16", "tour", "beginner". */
export const levelWords = (level: PlayerLevel): string =>
  level.kind === 'handicap' ? `handicap ${level.handicap}` : level.kind;
