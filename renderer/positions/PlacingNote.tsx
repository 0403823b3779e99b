import { useRef } from 'react';
import { useGiveFocusBack } from '../ui/giveFocusBack.ts';
import type { Placing } from './usePlacing.ts';

interface PlacingNoteProps {
  readonly placing: NonNullable<Placing>;
  readonly middle: () => void;
  readonly cancel: () => void;
}

const words = {
  ballPosition: 'Click where the ball lies.',
  holeLocation: 'Click where the hole is cut.',
  approach: 'Click where the approach is played from.',
} as const;

/** What the next click does, how to go without it, and the way out. */
export function PlacingNote({ placing, middle, cancel }: PlacingNoteProps): React.JSX.Element {
  const note = useRef<HTMLDivElement>(null);
  useGiveFocusBack(note);
  return (
    <div className="placing-note" role="status" ref={note}>
      {words[placing]}
      <button type="button" className="link-button" onClick={middle}>
        Put it in the middle
      </button>
      <button type="button" className="link-button" onClick={cancel}>
        Cancel
      </button>
    </div>
  );
}
