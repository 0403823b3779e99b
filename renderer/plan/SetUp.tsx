import { useMemo, useState } from 'react';
import { setUpPointers } from '../../shared/planner/setUpPointers.ts';
import { drawStance } from '../../shared/plate/stanceFigure.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { Technique } from '../../shared/words/vocabulary.ts';
import { Drawing } from '../ui/drawing.tsx';

interface SetUpProps {
  readonly technique: Technique;
  readonly handed: 'right' | 'left';
}

/** How the shot is set up, for who asks: nothing of it is made while it is closed. */
export function SetUp(props: SetUpProps): React.JSX.Element {
  const [open, setOpen] = useState(false);
  return (
    <details className="left-out" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>How it is set up</summary>
      {open && <Stance {...props} />}
    </details>
  );
}

/** From above and in words, for the player's own hand: common practice of coaching. */
function Stance({ technique, handed }: SetUpProps): React.JSX.Element {
  const drawing = useMemo(() => drawStance(technique, handed, screenStyle('stance')), [technique, handed]);
  return (
    <div className="set-up">
      <Drawing node={drawing} label={String(drawing.attributes['aria-label'] ?? '')} />
      <div>
        {setUpPointers(technique, handed).map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>Common practice; a teacher who sees the swing knows better.</p>
      </div>
    </div>
  );
}
