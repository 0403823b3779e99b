import { useRef, useState } from 'react';

interface TextFieldProps {
  readonly value: string;
  /** Called once with what was typed, when the field is left or Enter is pressed; Escape gives it up. */
  readonly commit: (value: string) => void;
  /** Called when the field is left as it was after a try that was refused: there is nothing wrong any more. */
  readonly putRight?: () => void;
  readonly inputMode?: 'text' | 'decimal';
  readonly label?: string;
  /** An example of what can be typed. */
  readonly placeholder?: string;
}

/** A field whose typing becomes one step when it is done. */
export function TextField({
  value,
  commit,
  putRight,
  inputMode = 'text',
  label,
  placeholder,
}: TextFieldProps): React.JSX.Element {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const tried = useRef(false);
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
        if (typed !== value) {
          tried.current = true;
          commit(typed.trim());
        } else if (tried.current) {
          tried.current = false;
          putRight?.();
        }
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setTyped(value);
      }}
    />
  );
}
