import { useEffect, useRef, useState } from 'react';
import { useSteady } from '../ui/useSteady.ts';

/** A held key has been let go when no step came for so long, ms. */
const REST_MS = 150;

interface Walking {
  /** A key is held down, and what nobody can read meanwhile may lag behind. */
  readonly walking: boolean;
  /** Whether this press of a key may step; told for each one that would. */
  readonly step: (repeated: boolean) => boolean;
}

/** Steps of a held key: no more of them than are seen, so that the walk ends where the key is let go. */
export function useWalking(): Walking {
  const [walking, setWalking] = useState(false);
  const unseen = useRef(false);
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(rest.current), []);
  const step = useSteady((repeated: boolean): boolean => {
    if (repeated) {
      clearTimeout(rest.current);
      rest.current = setTimeout(() => setWalking(false), REST_MS);
      setWalking(true);
      if (unseen.current) return false;
    }
    unseen.current = true;
    requestAnimationFrame(() => setTimeout(() => (unseen.current = false)));
    return true;
  });
  return { walking, step };
}
