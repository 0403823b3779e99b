import { useEffect, useRef } from 'react';

export interface Choice {
  readonly id: string;
  readonly label: string;
  /** Said in full: "Ball 3, east apron". */
  readonly name: string;
}

interface ChooserProps {
  readonly title: string;
  readonly shape: 'balls' | 'flags';
  readonly choices: readonly Choice[];
  readonly chosenId: string | null;
  readonly choose: (id: string) => void;
}

/** A row of balls or flags of which one is chosen. The arrow keys that walk it are the workspace's. */
export function Chooser({ title, shape, choices, chosenId, choose }: ChooserProps): React.JSX.Element | null {
  const row = useRef<HTMLDivElement>(null);
  // In a row too long for the strip, whoever walks it keeps the chosen one in sight.
  useEffect(() => {
    row.current
      ?.querySelector('[aria-checked=true]')
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [chosenId]);
  if (choices.length === 0) return null;
  return (
    <div ref={row} className={`chooser ${shape}`} role="radiogroup" aria-label={title}>
      <span className="chooser-name" aria-hidden>
        {title}
      </span>
      {choices.map(({ id, label, name }, index) => (
        <button
          key={id}
          type="button"
          role="radio"
          aria-checked={id === chosenId}
          aria-label={name}
          title={name}
          tabIndex={id === chosenId || (chosenId === null && index === 0) ? 0 : -1}
          onClick={() => choose(id)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}
