import { useEffect, useRef, useState } from 'react';

/** What nobody reads while a ball is under way follows it this far apart, ms. */
const BEAT_MS = 120;

/**
 * The value itself, or while something moves what it was at the last beat: a picture that takes long to draw then leaves
 * the time to what is looked at.
 * @param value the same object while nothing in it changes
 */
export function useBeat<T>(value: T, moving: boolean): T {
  const [shown, show] = useState(value);
  const shownAt = useRef(-Infinity);
  if (!moving && shown !== value) show(value);
  useEffect(() => {
    if (!moving) return undefined;
    const beat = (): void => {
      shownAt.current = performance.now();
      show(value);
    };
    const timer = setTimeout(beat, Math.max(0, shownAt.current + BEAT_MS - performance.now()));
    return () => clearTimeout(timer);
  }, [value, moving]);
  return moving ? shown : value;
}
