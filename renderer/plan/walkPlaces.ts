import type { Choice } from './Chooser.tsx';

/** Left and right walk the balls, up and down the flags; the focus follows where it was in the strip. */
export function walkPlaces(
  event: KeyboardEvent,
  balls: readonly Choice[],
  ballId: string | null,
  flags: readonly Choice[],
  flagId: string | null,
  choose: (kind: 'ball' | 'flag', id: string) => void,
  mayStep: (repeated: boolean) => boolean,
  strip: Element | null = null,
): void {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  const sideways = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
  const upward = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (sideways === 0 && upward === 0) return;
  event.preventDefault();
  const next = sideways !== 0 ? neighbour(balls, ballId, sideways) : neighbour(flags, flagId, upward);
  if (next === undefined || !mayStep(event.repeat)) return;
  choose(sideways !== 0 ? 'ball' : 'flag', next.id);
  if (strip === null) return;
  requestAnimationFrame(() => {
    const group = strip.querySelector(sideways !== 0 ? '.chooser.balls' : '.chooser.flags');
    group?.querySelector<HTMLElement>('[aria-checked=true]')?.focus();
  });
}

function neighbour(choices: readonly Choice[], id: string | null, step: number): Choice | undefined {
  const at = choices.findIndex((choice) => choice.id === id);
  return choices[(at + step + choices.length) % choices.length];
}
