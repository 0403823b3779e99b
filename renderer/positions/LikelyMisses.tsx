import { Crosshair, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { LikelyMisses as Found } from '../../shared/planner/likelyMisses.ts';
import { distance, withUnit } from '../../shared/units/format.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface LikelyMissesProps {
  readonly playerName: string;
  readonly distanceM: number;
  readonly found: Found | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly show: (distanceM: number | null) => void;
  readonly pin: () => void;
}

/** Where approach shots from some distance are likely to stop off the green, and balls pinned there. */
export function LikelyMisses(props: LikelyMissesProps): React.JSX.Element {
  const { playerName, distanceM, found, units, readOnly, show, pin } = props;
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const off = found === null ? 0 : found.offM.length / 2;
  return (
    <section className="likely" aria-label="Likely misses">
      <div className="side-head">
        <h2>Likely misses</h2>
      </div>
      <div className="form">
        <label>
          <span>Shots from</span>
          <TextField
            inputMode="decimal"
            value={withUnit(distance(distanceM, units))}
            commit={(typed) => {
              try {
                const bare = units.system === 'yards' ? 'yd' : 'm';
                show(Math.min(300, Math.max(20, parseLength(typed, bare, units.paceM, 'Shots from'))));
                setTrouble(null);
              } catch (error) {
                if (!(error instanceof InputProblem)) throw error;
                setTrouble({ message: error.message, remedy: error.remedy });
              }
            }}
          />
        </label>
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      {found !== null && (
        <p>
          {off} of {found.shots} shots at the middle of the green, along the line of play with {playerName}’s
          spread, stop off it in play: the small rings.
        </p>
      )}
      <div className="likely-actions">
        {found === null ? (
          <button type="button" className="button" onClick={() => show(distanceM)}>
            <Crosshair size={16} strokeWidth={1.9} aria-hidden /> Show them
          </button>
        ) : (
          <>
            {!readOnly && off > 0 && (
              <button type="button" className="button" onClick={pin}>
                Pin {found.spots.length} {found.spots.length === 1 ? 'ball' : 'balls'} there
              </button>
            )}
            <button type="button" className="button" onClick={() => show(null)}>
              <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Clear
            </button>
          </>
        )}
      </div>
    </section>
  );
}
