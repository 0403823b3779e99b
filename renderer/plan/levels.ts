import type { PlayerLevel } from '../../shared/atlas/records.ts';

export interface LevelPreset {
  readonly key: string;
  readonly words: string;
  readonly level: PlayerLevel;
}

/** Levels to try a shot at, best first. */
export const levelPresets: readonly LevelPreset[] = [
  { key: 'tour', words: 'tour', level: { kind: 'tour' } },
  ...[0, 5, 10, 15, 20, 28, 36].map((handicap) => ({
    key: String(handicap),
    words: handicap === 0 ? 'handicap 0, scratch' : `handicap ${handicap}`,
    level: { kind: 'handicap' as const, handicap },
  })),
  { key: 'beginner', words: 'beginner', level: { kind: 'beginner' } },
];

/** The key of a level, whether it is among the presets or not. */
export const levelKey = (level: PlayerLevel): string =>
  level.kind === 'handicap' ? String(level.handicap) : level.kind;
