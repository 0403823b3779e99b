import { useId, useState } from 'react';

interface NameFieldProps {
  readonly name: string;
  readonly value: string;
  /** Names that are in use already, offered while typing. */
  readonly known: readonly string[];
  readonly placeholder: string;
  readonly commit: (value: string) => void;
}

/** The longest name several records may share. */
const LONGEST = 60;

/** A name that several things share: typed anew, or one of those there are. */
export function NameField({ name, value, known, placeholder, commit }: NameFieldProps): React.JSX.Element {
  const id = useId();
  const [typed, setTyped] = useState(value);
  const [before, setBefore] = useState(value);
  if (before !== value) {
    setBefore(value);
    setTyped(value);
  }
  return (
    <label>
      <span>{name}</span>
      <input
        type="text"
        list={id}
        maxLength={LONGEST}
        placeholder={placeholder}
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={() => {
          if (typed.trim() !== value) commit(typed.trim());
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') setTyped(value);
        }}
      />
      <datalist id={id}>
        {known.map((one) => (
          <option key={one} value={one} />
        ))}
      </datalist>
    </label>
  );
}
