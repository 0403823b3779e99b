import { memo, useEffect, useRef, useState } from 'react';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface FlagToolsProps {
  /** Stands a flag where a line of a pin sheet says; throws InputProblem where it cannot. */
  readonly fromSheet: (typed: string) => void;
  readonly propose: () => void;
}

/** Hole locations without the mouse: a line as typed from a pin sheet, or fair ground proposed. */
export const FlagTools = memo(function FlagTools({ fromSheet, propose }: FlagToolsProps): React.JSX.Element {
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const [done, setDone] = useState(0);
  // An emptied field is another one: whoever is in it goes on with the next line of the sheet.
  const tools = useRef<HTMLDivElement>(null);
  const goesOn = useRef(false);
  useEffect(() => {
    if (goesOn.current) tools.current?.querySelector('input')?.focus();
    goesOn.current = false;
  }, [done]);
  return (
    <div className="flag-tools" ref={tools}>
      <div className="form">
        <label>
          <span>Sheet line</span>
          <TextField
            key={done}
            value=""
            placeholder="12 on, 5 from left"
            commit={(typed) => {
              try {
                fromSheet(typed);
                setTrouble(null);
                goesOn.current = tools.current?.querySelector(':focus') !== null;
                setDone(done + 1);
              } catch (error) {
                if (!(error instanceof InputProblem)) throw error;
                setTrouble({ message: error.message, remedy: error.remedy });
              }
            }}
          />
        </label>
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      <button type="button" className="button" onClick={propose}>
        Propose three flags
      </button>
    </div>
  );
});
