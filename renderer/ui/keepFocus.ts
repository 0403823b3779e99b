const FOCUSABLE =
  'button:not(:disabled, [tabindex="-1"]), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary';
/** Frames in which whatever takes the place of what went may take the focus itself. */
const FRAMES = 3;

const focusable = (part: Element): readonly HTMLElement[] => [
  ...part.querySelectorAll<HTMLElement>(FOCUSABLE),
];

/**
 * Whoever presses by keyboard what then goes, such as "Take it away", is left with the focus nowhere: it goes to what
 * stands where the pressed thing stood, and in the survey to the plate, whose keys go on.
 * @returns ends it
 */
export function keepFocus(): () => void {
  const pressed = ({ target, detail }: MouseEvent): void => {
    // A mouse has its place in hand already.
    if (detail !== 0 || !(target instanceof HTMLElement)) return;
    const around: { readonly part: Element; readonly at: number }[] = [];
    for (let part = target.parentElement; part !== null && part !== document.body; part = part.parentElement)
      around.push({ part, at: focusable(part).indexOf(target) });
    let frames = 0;
    const look = (): void => {
      frames += 1;
      if (frames < FRAMES) requestAnimationFrame(look);
      else if (document.activeElement === document.body && !target.isConnected) refocus(around);
    };
    requestAnimationFrame(look);
  };
  document.addEventListener('click', pressed, true);
  return () => document.removeEventListener('click', pressed, true);
}

function refocus(around: readonly { readonly part: Element; readonly at: number }[]): void {
  for (const { part, at } of around) {
    if (!part.isConnected) continue;
    const plate = part.closest('.survey')?.querySelector<HTMLElement>('.survey-map');
    const left = focusable(part);
    const next = plate ?? left[Math.min(Math.max(at, 0), left.length - 1)];
    if (next === undefined) continue;
    next.focus();
    return;
  }
}
