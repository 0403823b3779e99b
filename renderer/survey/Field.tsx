import { useId, useState } from 'react';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { useEntry } from '../ui/useEntry.ts';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  /** Called when the field is left or Enter pressed; an InputProblem it throws is told under the field. */
  readonly commit: (typed: string) => void;
  readonly readOnly?: boolean;
}

/**
 * A labelled field with its unit, whose typing becomes one step when it is done; what is wrong is said right there, and keeps
 * the focus. What is right and entered beside a plate gives it to the plate, where the keys of the tools are.
 */
export function Field({ label, value, unit, commit, readOnly = false }: FieldProps): React.JSX.Element {
  const [known, setKnown] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTrouble(null);
  }
  const { typed, type, enter, undo } = useEntry(value, {
    commit: (text) => {
      try {
        commit(text);
        setTrouble(null);
        return true;
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
        setTrouble(error.message);
        return false;
      }
    },
    putRight: () => setTrouble(null),
  });
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
          onChange={({ target }) => type(target.value)}
          onBlur={enter}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && enter())
              event.currentTarget.closest('.survey')?.querySelector<HTMLElement>('.survey-map')?.focus();
            if (event.key === 'Escape') {
              undo();
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
