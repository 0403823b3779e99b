import { useId } from 'react';

interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [value: T, words: string])[];
  readonly readOnly: boolean;
  readonly choose: (value: T) => void;
}

/** A labelled choice of a few words among the fields of a thing held. */
export function SelectField<T extends string>(props: SelectFieldProps<T>): React.JSX.Element {
  const { label, value, options, readOnly, choose } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        disabled={readOnly}
        onChange={({ target }) => {
          const chosen = options.find(([one]) => one === target.value);
          if (chosen !== undefined) choose(chosen[0]);
        }}
      >
        {options.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
