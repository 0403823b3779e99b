import { useState } from 'react';

interface TextFieldProps {
  readonly value: string;
  /** Called once with what was typed, when the field is left or Enter is pressed; Escape gives it up. */
  readonly commit: (value: string) => void;
  readonly inputMode?: 'text' | 'decimal';
  readonly label?: string;
  /** An example of what can be typed. */
  readonly placeholder?: string;
}

/** A field whose typing becomes one step when it is done. */
export function TextField({
  value,
  commit,
  inputMode = 'text',
  label,
  placeholder,
}: TextFieldProps): React.JSX.Element {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  if (known !== value) {
    setKnown(value);
    setTyped(value);
  }
  return (
    <input
      type="text"
      inputMode={inputMode}
      aria-label={label}
      placeholder={placeholder}
      value={typed}
      onChange={({ target }) => setTyped(target.value)}
      onBlur={() => {
        if (typed !== value) commit(typed.trim());
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setTyped(value);
      }}
    />
  );
}
