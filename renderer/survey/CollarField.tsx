import { useState } from 'react';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';

interface CollarFieldProps {
  readonly units: UnitsPreference;
  readonly kind: 'fringe' | 'approach';
  readonly put: (widthM: number) => void;
  readonly trouble: string | null;
}

/** A band of a stated width round an area. */
export function CollarField({ units, kind, put, trouble }: CollarFieldProps): React.JSX.Element {
  const [typed, setTyped] = useState('1');
  const [unread, setUnread] = useState<string | null>(null);
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const run = (): void => {
    try {
      put(parseLength(typed, unit, units.paceM, 'Width'));
      setUnread(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setUnread(error.message);
    }
  };
  const told = unread ?? trouble;
  return (
    <div className="field">
      <label htmlFor="collar-width">{kind === 'fringe' ? 'Fringe of' : 'Approach of'}</label>
      <span className="field-box with-button">
        <input
          id="collar-width"
          type="text"
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') run();
          }}
        />
        <span className="field-unit" aria-hidden>
          {unit}
        </span>
        <button type="button" className="link-button" onClick={run}>
          Put round it
        </button>
      </span>
      {told !== null && (
        <p className="field-trouble" role="alert">
          {told}
        </p>
      )}
    </div>
  );
}
