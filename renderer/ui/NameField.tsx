import { useId } from 'react';
import { useEntry } from './useEntry.ts';

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
  const { typed, type, enter, undo } = useEntry(value, { commit });
  return (
    <label>
      <span>{name}</span>
      <input
        type="text"
        list={id}
        maxLength={LONGEST}
        placeholder={placeholder}
        value={typed}
        onChange={({ target }) => type(target.value)}
        onBlur={enter}
        onKeyDown={(event) => {
          if (event.key === 'Enter') enter();
          if (event.key === 'Escape') undo();
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
