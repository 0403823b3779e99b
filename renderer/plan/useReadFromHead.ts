import { type RefObject, useEffect, useRef } from 'react';

/** A scrolled part that goes back to its head whenever it comes to show something else. */
export function useReadFromHead(shown: string | null): RefObject<HTMLDivElement | null> {
  const part = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (part.current !== null) part.current.scrollTop = 0;
  }, [shown]);
  return part;
}
