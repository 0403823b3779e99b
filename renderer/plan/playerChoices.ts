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

/** The players of the atlas, the one in use first, then the levels none of them has. */
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

/** Whom to begin with: the player in use, another player of the atlas, and a level far from both. */
export function firstPlayers(choices: readonly PlayerChoice[]): readonly string[] {
  const [own, ...others] = choices;
  if (own === undefined) return [];
  const player = others.find(({ key }) => !key.startsWith('level:'));
  const levels = ['level:tour', 'level:20', 'level:5'];
  const more = levels.filter((key) => others.some((choice) => choice.key === key));
  return [own.key, ...(player === undefined ? [] : [player.key]), ...more].slice(0, 3);
}
