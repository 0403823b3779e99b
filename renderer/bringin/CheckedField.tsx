import { useId, useState } from 'react';
import { InputProblem } from '../../shared/words/inputProblem.ts';

interface CheckedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  /** Called when the field is left or Enter pressed; an InputProblem it throws is told under the field. */
  readonly commit: (typed: string) => void;
}

/** A labelled field whose typing counts when it is done; what is wrong is said right there. */
export function CheckedField({ label, value, unit, commit }: CheckedFieldProps): React.JSX.Element {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const [trouble, setTrouble] = useState('');
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble('');
  }
  const leave = (): void => {
    if (typed.trim() === value && trouble === '') return;
    try {
      setTrouble('');
      if (typed.trim() !== value) commit(typed.trim());
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  return (
    <div className="checked-field">
      <label htmlFor={id}>
        {label}
        {unit === undefined ? '' : `, ${unit}`}
      </label>
      <input
        id={id}
        type="text"
        value={typed}
        aria-invalid={trouble !== ''}
        aria-describedby={trouble === '' ? undefined : `${id}-trouble`}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            event.preventDefault();
            leave();
          }
        }}
      />
      {trouble !== '' && (
        <p className="field-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
