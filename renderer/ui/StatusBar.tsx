import { Check, TriangleAlert } from 'lucide-react';
import { useRef } from 'react';
import { useGiveFocusBack } from './giveFocusBack.ts';

interface StatusBarProps {
  /** "Saved 14:06", or why not. */
  readonly saved: string;
  readonly savedWell: boolean;
  readonly plan: string;
  /** Share of the answer under way, or null. */
  readonly progress: number | null;
  readonly cancel: () => void;
  readonly end: string;
}

/** Whether the work is safe, what the plan stands on, and what is under way. */
export function StatusBar({
  saved,
  savedWell,
  plan,
  progress,
  cancel,
  end,
}: StatusBarProps): React.JSX.Element {
  return (
    <footer className="status-bar">
      {progress !== null && (
        <div className="status-progress" style={{ width: `${Math.round(progress * 100)}%` }} />
      )}
      <span className="status-item">
        {savedWell ? (
          <Check size={15} strokeWidth={1.9} aria-hidden />
        ) : (
          <TriangleAlert size={15} strokeWidth={1.9} aria-hidden />
        )}
        {saved}
      </span>
      {plan !== '' && <span className="status-item">{plan}</span>}
      {progress !== null && <Cancel cancel={cancel} />}
      <span className="status-end">{end}</span>
    </footer>
  );
}

/** There while there is something to cancel. */
function Cancel({ cancel }: Pick<StatusBarProps, 'cancel'>): React.JSX.Element {
  const button = useRef<HTMLButtonElement>(null);
  useGiveFocusBack(button);
  return (
    <button ref={button} type="button" className="link-button" onClick={cancel}>
      Cancel
    </button>
  );
}
