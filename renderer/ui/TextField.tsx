import { useEntry } from './useEntry.ts';

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

/** A field whose typing becomes one step when it is done. Enter leaves the focus in it. */
export function TextField({
  value,
  commit,
  putRight,
  inputMode = 'text',
  label,
  placeholder,
}: TextFieldProps): React.JSX.Element {
  const { typed, type, enter, undo } = useEntry(value, { commit, putRight });
  return (
    <input
      type="text"
      inputMode={inputMode}
      aria-label={label}
      placeholder={placeholder}
      value={typed}
      onChange={({ target }) => type(target.value)}
      onBlur={enter}
      onKeyDown={(event) => {
        if (event.key === 'Enter') enter();
        if (event.key === 'Escape') undo();
      }}
    />
  );
}
