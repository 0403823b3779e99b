import { useEffect, useState } from 'react';
import type { SurroundsMap } from '../../shared/planner/surroundsMap.ts';
import type { Planning } from '../store/planning.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

interface Found {
  readonly key: string;
  readonly map: SurroundsMap | null;
  readonly share: number;
  readonly trouble: TroubleWords | null;
}

/**
 * The map of the surrounds of one flag or more while it is wanted.
 * @param key names everything the map depends on: another key, another map
 */
export function useSurrounds(
  planning: Pick<Planning, 'surrounds'>,
  flagIds: readonly string[],
  key: string,
  wanted: boolean,
): {
  readonly map: SurroundsMap | null;
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
} {
  const [found, setFound] = useState<Found | null>(null);
  const known = found?.key === key && found.map !== null;
  useEffect(() => {
    if (!wanted || flagIds.length === 0 || known) return undefined;
    return planning.surrounds(flagIds, {
      progress: (share) => setFound({ key, map: null, share, trouble: null }),
      answer: (map) => setFound({ key, map, share: 1, trouble: null }),
      problem: (trouble) => setFound({ key, map: null, share: 0, trouble }),
    });
  }, [planning, flagIds, key, wanted, known]);
  if (!wanted) return { map: null, share: null, trouble: null };
  if (found?.key !== key) return { map: null, share: 0, trouble: null };
  return {
    map: found.map,
    share: found.map === null && found.trouble === null ? found.share : null,
    trouble: found.trouble,
  };
}
