import { useId, useState } from 'react';
import { InputProblem } from '../../shared/words/inputProblem.ts';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  /** Called when the field is left or Enter pressed; an InputProblem it throws is told under the field. */
  readonly commit: (typed: string) => void;
  readonly readOnly?: boolean;
}

/** A labelled field with its unit, whose typing becomes one step when it is done; what is wrong is said right there. */
export function Field({ label, value, unit, commit, readOnly = false }: FieldProps): React.JSX.Element {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble(null);
  }
  const leave = (): void => {
    if (typed.trim() === value) {
      setTrouble(null);
      return;
    }
    try {
      commit(typed.trim());
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <input
          id={id}
          type="text"
          value={typed}
          readOnly={readOnly}
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : `${id}-trouble`}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur();
            if (event.key === 'Escape') {
              setTyped(value);
              setTrouble(null);
            }
          }}
        />
        {unit !== undefined && (
          <span className="field-unit" aria-hidden>
            {unit}
          </span>
        )}
      </span>
      {trouble !== null && (
        <p className="field-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

interface TypedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  readonly change: (typed: string) => void;
  readonly enter: () => void;
  readonly trouble: string | null;
  readonly inputRef?: React.Ref<HTMLInputElement>;
}

/** A field of the thing being drawn: kept by the hand as it is typed, Enter puts it to use. */
export function TypedField(props: TypedFieldProps): React.JSX.Element {
  const { label, value, unit, change, enter, trouble, inputRef } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-box">
        <input
          id={id}
          ref={inputRef}
          type="text"
          value={value}
          autoComplete="off"
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : `${id}-trouble`}
          onChange={({ target }) => change(target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            enter();
          }}
        />
        {unit !== undefined && (
          <span className="field-unit" aria-hidden>
            {unit}
          </span>
        )}
      </span>
      {trouble !== null && (
        <p className="field-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
