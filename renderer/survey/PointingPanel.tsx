import type { PointingHand, PointingState } from './pointingHand.ts';

/** Which point's place is wanted, and how to give it. */
export function PointingPanel({
  hand,
  state: { points, index },
}: {
  readonly hand: PointingHand;
  readonly state: PointingState;
}): React.JSX.Element | null {
  const asked = index === null ? undefined : points[index];
  if (asked === undefined) return null;
  const left = points.filter(({ at }) => at === null).length;
  return (
    <section className="held" aria-label="Place on the map">
      <h2 aria-live="polite">Where is {asked.name}?</h2>
      <p className="hint">
        Click where it stood, or walk there with the arrow keys and press <kbd>Enter</kbd>. <kbd>Esc</kbd>{' '}
        goes back to the list.
      </p>
      <p>{left === 0 ? 'Every point has a place.' : `${String(left)} without a place.`}</p>
      <div className="held-actions">
        <button type="button" className="button" onClick={() => hand.finish()}>
          Back to the list
        </button>
        <button type="button" className="link-button" onClick={() => hand.skip()}>
          Not this one
        </button>
      </div>
    </section>
  );
}
