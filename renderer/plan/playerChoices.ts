import type { PlayerRecord } from '../../shared/atlas/records.ts';
import { levelKey, levelPresets } from './levels.ts';

/** Somebody whose advice can be set beside others: a player of the atlas, or a level with the bag in use. */
export interface PlayerChoice {
  readonly key: string;
  readonly words: string;
  readonly player: PlayerRecord;
}

export const LEAST_PLAYERS = 2;
export const MOST_PLAYERS = 4;

/** The players of the atlas, the one in use first, then the levels that one has not. */
export function playerChoices(
  players: readonly PlayerRecord[],
  inUse: PlayerRecord,
): readonly PlayerChoice[] {
  const others = players.filter(({ id }) => id !== inUse.id);
  return [
    ...[inUse, ...others].map((player) => ({ key: player.id, words: player.name, player })),
    ...levelPresets
      .filter(({ key }) => key !== levelKey(inUse.level))
      .map(({ key, words, level }) => {
        const id = `level:${key}`;
        return { key: id, words, player: { ...inUse, id, name: words, level } };
      }),
  ];
}

const AT_FIRST = 3;

/** Whom to begin with: the player in use, others of the atlas, and where those are few levels that none of them has. */
export function firstPlayers(choices: readonly PlayerChoice[]): readonly string[] {
  const own = choices.filter(({ key }) => !key.startsWith('level:')).slice(0, AT_FIRST);
  if (own.length === 0) return [];
  const had = own.map(({ player }) => `level:${levelKey(player.level)}`);
  const levels = ['level:tour', 'level:20', 'level:5'].filter(
    (key) => !had.includes(key) && choices.some((choice) => choice.key === key),
  );
  return [...own.map(({ key }) => key), ...levels].slice(0, AT_FIRST);
}
