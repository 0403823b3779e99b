import { Diamond, TriangleAlert } from 'lucide-react';
import type { LookAt } from './lookAt.ts';

interface ToLookAtProps {
  readonly items: readonly LookAt[];
  readonly shownId: string | null;
  readonly readOnly: boolean;
  readonly show: (item: LookAt) => void;
  readonly mend: (item: LookAt) => void;
}

const MOST = 12;

/** What the checks and the fit say should be looked at, each with its place and its mend. */
export function ToLookAt({ items, shownId, readOnly, show, mend }: ToLookAtProps): React.JSX.Element {
  return (
    <section aria-label="To look at">
      <h2>
        To look at{' '}
        {items.length > 1 && (
          <span className="hint">
            <kbd>N</kbd> next
          </span>
        )}
      </h2>
      {items.length === 0 && <p className="hint">Nothing just now.</p>}
      <ul className="look-at">
        {items.slice(0, MOST).map((item) => (
          <li key={item.id} aria-current={item.id === shownId}>
            {item.ink === 'alert' ? (
              <TriangleAlert size={18} strokeWidth={1.9} className="alert-ink" aria-hidden />
            ) : (
              <Diamond size={18} strokeWidth={1.9} className="doubt-ink" aria-hidden />
            )}
            <p>
              {item.text} {item.id === shownId && item.remedy !== '' && `${item.remedy} `}
              {item.at !== null && (
                <button
                  type="button"
                  className="link-button"
                  aria-label={`${item.ink === 'doubt' ? 'Show where' : 'Show it'}: ${item.text}`}
                  onClick={() => show(item)}
                >
                  {item.ink === 'doubt' ? 'Show where' : 'Show it'}
                </button>
              )}{' '}
              {item.mend !== null && !readOnly && (
                <button
                  type="button"
                  className="link-button"
                  aria-label={`Mend it: ${item.mend.annotation}`}
                  title={item.mend.annotation}
                  onClick={() => mend(item)}
                >
                  Mend it
                </button>
              )}
            </p>
          </li>
        ))}
      </ul>
      {items.length > MOST && <p className="hint">{items.length - MOST} more.</p>}
    </section>
  );
}
