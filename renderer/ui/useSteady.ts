import { useCallback, useLayoutEffect, useRef } from 'react';

/** A handler that stays the same while its component is made again and does what the newest one does. */
export function useSteady<A extends readonly unknown[], R>(handler: (...of: A) => R): (...of: A) => R {
  const newest = useRef(handler);
  useLayoutEffect(() => {
    newest.current = handler;
  });
  return useCallback((...of: A) => newest.current(...of), []);
}
