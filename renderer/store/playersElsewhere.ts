import { recordsOf } from '../../shared/atlas/document.ts';
import type { PlayerRecord } from '../../shared/atlas/records.ts';
import type { Library } from '../library/library.ts';

/** The players of one atlas of the library. */
export interface PlayersOfAtlas {
  readonly atlasId: string;
  readonly atlasName: string;
  readonly players: readonly PlayerRecord[];
}

/** Whoever plays in the other atlases of the library, newest atlas first. */
export async function playersElsewhere(
  library: Pick<Library, 'list' | 'load'>,
  openId: string | null,
): Promise<readonly PlayersOfAtlas[]> {
  const found: PlayersOfAtlas[] = [];
  for (const { id, name } of await library.list()) {
    const shelved = id === openId ? null : await library.load(id);
    if (shelved === null) continue;
    const { shelf, base, steps } = shelved;
    const document = steps.slice(0, shelf.stepsInForce).at(-1)?.document ?? base;
    const players = recordsOf(document, 'player');
    if (players.length > 0) found.push({ atlasId: id, atlasName: name, players });
  }
  return found;
}
