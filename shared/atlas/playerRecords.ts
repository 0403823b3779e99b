import type { ClubKind, Technique } from '../words/vocabulary.ts';
import type { RecordId } from './records.ts';

export type PlayerLevel =
  | { readonly kind: 'tour' }
  | { readonly kind: 'handicap'; readonly handicap: number }
  | { readonly kind: 'beginner' };

/** Carries of one club's small, medium and long swing from a clean lie, as its player measured them; rising. */
export interface MeasuredCarries {
  readonly smallM: number;
  readonly mediumM: number;
  readonly longM: number;
}

/** Degrees that a club can have. */
export const clubLimits = { loft: { least: -5, most: 80 }, bounce: { least: -10, most: 30 } } as const;

export interface Club {
  readonly id: RecordId;
  readonly kind: ClubKind;
  /** As the player says it: "46° wedge", "8-iron". */
  readonly name: string;
  readonly loftDeg: number;
  readonly bounceDeg: number;
  /** Absent until measured. */
  readonly carriesM?: MeasuredCarries;
}

export interface PlayerRecord {
  readonly type: 'player';
  readonly id: RecordId;
  readonly name: string;
  readonly handed: 'right' | 'left';
  readonly level: PlayerLevel;
  readonly bag: readonly Club[];
  /** Techniques not listed count as `mine`. */
  readonly repertoire: Readonly<Partial<Record<Technique, 'mine' | 'learning' | 'notMine'>>>;
  /** How many strokes a harder shot must save before it beats a simpler one. */
  readonly simplicityMarginStrokes: number;
  readonly paceM: number;
  readonly inUse: boolean;
}
