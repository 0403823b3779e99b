import { useEffect } from 'react';

export interface Pressed {
  readonly shift: boolean;
  /** Nothing else has the focus that would want the key itself. */
  readonly onPlate: boolean;
}

/** Keys of the whole window for whoever has something in hand, unless somebody types or a dialog is open. */
export function useSurveyKeys(press: (key: string, pressed: Pressed) => boolean): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const { target } = event;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      const typing =
        (target instanceof HTMLInputElement && target.type !== 'checkbox') ||
        target instanceof HTMLTextAreaElement ||
        target instanceof HTMLSelectElement;
      const elsewhere = target instanceof Element && target.closest('dialog, [role=menu]') !== null;
      if (elsewhere || (typing && event.key !== 'Escape')) return;
      const onPlate =
        !(target instanceof Element) ||
        target === window.document.body ||
        target.closest('.survey-map') !== null;
      if (press(event.key, { shift: event.shiftKey, onPlate })) event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  });
}
