import { useEffect, useState } from 'react';
import type { TriedShot, TryRequest } from '../../shared/planner/tryShot.ts';
import type { Planning } from '../store/planning.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

interface Found {
  readonly from: string;
  readonly tried: TriedShot | null;
  readonly trouble: TroubleWords | null;
}

const nothing = { tried: null, trouble: null } as const;

/**
 * The outcome of a try, kept while the next one of the same ball is worked out; null where nothing is tried.
 * @param from names the ball, the flag and who plays: a try from elsewhere is none from here
 * @param sceneKey names everything else it depends on
 */
export function useTry(
  planning: Pick<Planning, 'tryShot'>,
  request: TryRequest | null,
  from: string,
  sceneKey: string | null,
): { readonly tried: TriedShot | null; readonly trouble: TroubleWords | null } {
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    if (request === null) return undefined;
    let wanted = true;
    planning.tryShot(
      request,
      (tried) => {
        if (wanted) setFound({ from, tried, trouble: null });
      },
      (trouble) => {
        if (wanted)
          setFound((before) => ({ from, tried: before?.from === from ? before.tried : null, trouble }));
      },
    );
    return () => {
      wanted = false;
    };
  }, [planning, request, from, sceneKey]);
  return request === null || found?.from !== from ? nothing : found;
}
