import { type RefObject, useLayoutEffect } from 'react';

/** How long what replaces a part may take to appear, frames. */
const FRAMES = 30;

/** The tab of the workspace shown: there is always one. */
const tab = (): HTMLElement | null => document.querySelector('[role=tab][aria-selected=true]');

/** A part that takes the focus with it when it goes gives it back to whatever had it when the part came. */
export function useGiveFocusBack(part: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const before = document.activeElement;
    const here = part.current;
    return () => {
      if (here?.contains(document.activeElement) !== true) return;
      const back = before instanceof HTMLElement && before !== document.body && !here.contains(before);
      (back && before.isConnected ? before : tab())?.focus();
    };
  }, [part]);
}

/** After a press that takes the pressed thing itself away: the focus goes to what comes in its place. */
export function focusInstead(selector: string): void {
  let frames = 0;
  const look = (): void => {
    const instead = document.querySelector<HTMLElement>(selector);
    frames += 1;
    if (instead !== null) instead.focus();
    else if (frames < FRAMES) requestAnimationFrame(look);
    else if (document.activeElement === document.body) tab()?.focus();
  };
  requestAnimationFrame(look);
}
