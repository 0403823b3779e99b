import { useMemo, useState } from 'react';
import type { PlayerRecord } from '../../shared/atlas/records.ts';
import type { PlayersRequest } from '../../shared/planner/playersAdvice.ts';
import { USUAL_SEED } from '../../shared/protocol/planning.ts';
import type { Planning } from '../store/planning.ts';
import { firstPlayers, LEAST_PLAYERS, type PlayerChoice, playerChoices } from './playerChoices.ts';
import { usePlayers } from './usePlayers.ts';

/** Shots for each option of each player beside the others: a standard error of a few hundredths. */
const PLAYERS_SHOTS = 200;

interface PlayersBeside extends ReturnType<typeof usePlayers> {
  readonly choices: readonly PlayerChoice[];
  /** Who is set beside each other, in their order. */
  readonly keys: readonly string[];
  readonly setKeys: (keys: readonly string[]) => void;
}

/**
 * Who can be set beside each other, who is, and what each is advised.
 * @param pair the ball and flag to plan for them; null while nobody looks
 */
export function usePlayersBeside(
  planning: Pick<Planning, 'players'>,
  players: readonly PlayerRecord[],
  player: PlayerRecord | undefined,
  pair: { readonly ballId: string | null; readonly flagId: string | null } | null,
  sceneKey: string | null,
): PlayersBeside {
  const choices = useMemo(
    () => (player === undefined ? [] : playerChoices(players, player)),
    [players, player],
  );
  const [asked, setKeys] = useState<readonly string[] | null>(null);
  const keys = useMemo(() => {
    const known = asked?.filter((key) => choices.some((choice) => choice.key === key)) ?? [];
    return known.length < LEAST_PLAYERS ? firstPlayers(choices) : known;
  }, [asked, choices]);
  const ballId = pair?.ballId ?? null;
  const flagId = pair?.flagId ?? null;
  const request = useMemo<PlayersRequest | null>(
    () =>
      ballId === null || flagId === null
        ? null
        : {
            ballId,
            flagId,
            shotsPerOption: PLAYERS_SHOTS,
            seed: USUAL_SEED,
            players: keys.flatMap((key) => choices.find((choice) => choice.key === key)?.player ?? []),
          },
    [ballId, flagId, keys, choices],
  );
  return { choices, keys, setKeys, ...usePlayers(planning, request, sceneKey) };
}
