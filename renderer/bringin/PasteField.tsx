import { useState } from 'react';
import type { FormatsSource } from '../workers/formatsChannel.ts';

interface PasteFieldProps {
  readonly take: (source: FormatsSource) => void;
}

/** A place to paste a list of points copied from a table or a text. */
export function PasteField({ take }: PasteFieldProps): React.JSX.Element {
  const [text, setText] = useState('');
  const pasted = (from: string): FormatsSource => ({
    fileName: 'pasted points.csv',
    content: new Blob([from]),
    projection: null,
  });
  return (
    <form
      className="dialog-form"
      onSubmit={(event) => {
        event.preventDefault();
        take(pasted(text));
      }}
    >
      <label htmlFor="pasted-points">
        Rows copied from a table, one point a row: its place, and a height or a slope with the bearing it
        falls in. A level book is read too.
      </label>
      <textarea
        id="pasted-points"
        className="paste-field"
        rows={10}
        spellCheck={false}
        placeholder={'east, north, height\n3.0, 4.5, 20.31\n6.0, 4.5, 20.24'}
        value={text}
        onChange={({ target }) => setText(target.value)}
        onPaste={(event) => {
          // A whole list pasted into an empty field is looked at at once.
          const whole = event.clipboardData.getData('text/plain');
          if (text !== '' || whole.trim().split('\n').length < 2) return;
          event.preventDefault();
          take(pasted(whole));
        }}
      />
      <div className="dialog-actions">
        <button type="submit" className="button" disabled={text.trim() === ''}>
          Look at it
        </button>
      </div>
    </form>
  );
}
