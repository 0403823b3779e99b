import { useEffect, useState } from 'react';
import type { TriedShot, TryRequest } from '../../shared/planner/tryShot.ts';
import type { Planning } from '../store/planning.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

/** The outcome of a try, kept while the next one is worked out; null where nothing is tried. */
export function useTry(
  planning: Pick<Planning, 'tryShot'>,
  request: TryRequest | null,
  scene: unknown,
): { readonly tried: TriedShot | null; readonly trouble: TroubleWords | null } {
  const [tried, setTried] = useState<TriedShot | null>(null);
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  useEffect(() => {
    if (request === null) return undefined;
    let wanted = true;
    planning.tryShot(
      request,
      (answer) => {
        if (!wanted) return;
        setTried(answer);
        setTrouble(null);
      },
      (problem) => {
        if (wanted) setTrouble(problem);
      },
    );
    return () => {
      wanted = false;
    };
  }, [planning, request, scene]);
  return request === null ? { tried: null, trouble: null } : { tried, trouble };
}
