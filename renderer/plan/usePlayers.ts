import { useEffect, useState } from 'react';
import type { PlayerAdvice, PlayersRequest } from '../../shared/planner/playersAdvice.ts';
import type { Planning } from '../store/planning.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

interface Found {
  readonly request: PlayersRequest;
  readonly sceneKey: string | null;
  readonly advice: readonly PlayerAdvice[] | null;
  readonly share: number;
  readonly trouble: TroubleWords | null;
}

interface PlayersNow {
  readonly advice: readonly PlayerAdvice[] | null;
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
}

const nothing: PlayersNow = { advice: null, share: null, trouble: null };

/**
 * What the players of a request are advised; null where none is asked for. When other players are asked, what is known of
 * the rest stays until the answer comes; on other ground or another day nothing does.
 * @param sceneKey names everything it depends on besides the request
 */
export function usePlayers(
  planning: Pick<Planning, 'players'>,
  request: PlayersRequest | null,
  sceneKey: string | null,
): PlayersNow {
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    if (request === null) return undefined;
    const asked = { request, sceneKey };
    return planning.players(request, {
      progress: (share) =>
        setFound((now) => ({ ...asked, advice: now?.advice ?? null, share, trouble: null })),
      answer: (advice) => setFound({ ...asked, advice, share: 1, trouble: null }),
      problem: (trouble) => setFound({ ...asked, advice: null, share: 1, trouble }),
    });
  }, [planning, request, sceneKey]);
  if (request === null || found === null) return request === null ? nothing : { ...nothing, share: 0 };
  const { ballId, flagId } = found.request;
  if (ballId !== request.ballId || flagId !== request.flagId || found.sceneKey !== sceneKey)
    return { ...nothing, share: 0 };
  const current = found.request === request;
  return {
    advice: found.advice,
    share: current && found.share === 1 ? null : current ? found.share : 0,
    trouble: current ? found.trouble : null,
  };
}
