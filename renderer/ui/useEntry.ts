import { useRef, useState } from 'react';

interface Entry {
  readonly typed: string;
  readonly type: (typed: string) => void;
  /** Puts what was typed to use, once, whether the field is left or Enter pressed; false where it was refused. */
  readonly enter: () => boolean;
  /** Gives up what was typed. */
  readonly undo: () => void;
}

interface EntryUse {
  /** Says false where it cannot be taken. */
  readonly commit: (typed: string) => unknown;
  /** Called when the field is as it was after a try: there is nothing wrong any more. */
  readonly putRight?: (() => void) | undefined;
}

/** What is typed into a field until it becomes one step. */
export function useEntry(value: string, { commit, putRight }: EntryUse): Entry {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const tried = useRef<{ readonly typed: string; readonly value: string; readonly taken: boolean } | null>(
    null,
  );
  if (known !== value) {
    setKnown(value);
    setTyped(value);
  }
  return {
    typed,
    type: setTyped,
    enter: () => {
      const before = tried.current;
      if (typed.trim() === value) {
        tried.current = null;
        if (before !== null) putRight?.();
        return true;
      }
      // Left after Enter it is the same try.
      if (before?.typed === typed && before.value === value) return before.taken;
      const taken = commit(typed.trim()) !== false;
      tried.current = { typed, value, taken };
      return taken;
    },
    undo: () => setTyped(value),
  };
}
