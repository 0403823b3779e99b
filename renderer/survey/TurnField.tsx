import { useState } from 'react';
import { parseDegrees } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { Hand } from './hand.ts';

/** Turns the held thing by typed degrees, clockwise. */
export function TurnField({ hand }: { readonly hand: Hand }): React.JSX.Element {
  const [typed, setTyped] = useState('');
  return (
    <span className="turn-field">
      <input
        type="text"
        aria-label="Turn by degrees, clockwise"
        placeholder="15°"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
      />
      <button
        type="button"
        className="link-button"
        onClick={() => {
          try {
            hand.turnBy(parseDegrees(typed === '' ? '15' : typed, 'Turn'));
          } catch (error) {
            if (!(error instanceof InputProblem)) throw error;
            setTyped('');
          }
        }}
      >
        Turn
      </button>
    </span>
  );
}
