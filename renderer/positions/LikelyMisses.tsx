import { Crosshair, MapPin, Trash2 } from 'lucide-react';
import { memo, useState } from 'react';
import { approachLength, withUnit } from '../../shared/units/format.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { type Approach, LEAST_APPROACH_M, MOST_APPROACH_M, type Origin, tooNear } from './useLikelyMisses.ts';

interface LikelyMissesProps {
  readonly playerName: string;
  readonly approach: Approach;
  /** Letter of the flag chosen; null where there is none. */
  readonly flagLabel: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  /** The next click on the plate says where the approach is played from. */
  readonly marking: boolean;
  readonly setMarking: (marking: boolean) => void;
  readonly pin: () => void;
}

/** Where approach shots are likely to stop off the green, and balls pinned there. */
export const LikelyMisses = memo(function LikelyMisses(props: LikelyMissesProps): React.JSX.Element {
  const { playerName, approach, flagLabel, units, readOnly } = props;
  const { settings, change, line, found } = approach;
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const far = (metres: number): string => withUnit(approachLength(metres, units));
  const off = found === null ? 0 : found.offM.length / 2;
  const along = settings.origin === 'line';
  const unfit = line !== null && tooNear(line);
  return (
    <section className="likely" aria-label="Likely misses">
      <div className="side-head">
        <h2>Likely misses</h2>
      </div>
      <div className="form">
        <label>
          <span>Played from</span>
          <select
            value={settings.origin}
            onChange={({ target }) => change({ origin: originOf(target.value) })}
          >
            <option value="line">the line of play</option>
            {approach.marked && <option value="marked">the place marked</option>}
            {approach.places.map(({ origin, words }) => (
              <option key={origin} value={origin}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {along && (
          <label>
            <span>With</span>
            <select
              value={settings.clubId ?? ''}
              onChange={({ target }) => change({ clubId: target.value === '' ? null : target.value })}
            >
              <option value="">what it takes</option>
              {approach.clubs.map(({ id, name, reachM }) => (
                <option key={id} value={id}>
                  a full {name}, {far(reachM)}
                </option>
              ))}
            </select>
          </label>
        )}
        {along && settings.clubId === null && (
          <label>
            <span>How far out</span>
            <TextField
              putRight={() => setTrouble(null)}
              inputMode="decimal"
              value={far(settings.distanceM)}
              commit={(typed) => {
                try {
                  const bare = units.system === 'yards' ? 'yd' : 'm';
                  const typedM = parseLength(typed, bare, units.paceM, 'How far out');
                  change({ distanceM: Math.min(MOST_APPROACH_M, Math.max(LEAST_APPROACH_M, typedM)) });
                  setTrouble(null);
                } catch (error) {
                  if (!(error instanceof InputProblem)) throw error;
                  setTrouble({ message: error.message, remedy: error.remedy });
                }
              }}
            />
          </label>
        )}
        {flagLabel !== null && (
          <label>
            <span>Aimed at</span>
            <select
              value={settings.atFlag ? 'flag' : 'middle'}
              onChange={({ target }) => change({ atFlag: target.value === 'flag' })}
            >
              <option value="middle">middle of the green</option>
              <option value="flag">flag {flagLabel}</option>
            </select>
          </label>
        )}
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      {line !== null && unfit && (
        <p>
          That is {far(line.distanceM)}: an approach is played from {far(LEAST_APPROACH_M)} to{' '}
          {far(MOST_APPROACH_M)}.
        </p>
      )}
      {found !== null && line !== null && (
        <p>
          {off} of {found.shots} shots from {far(line.distanceM)} with {playerName}’s spread stop off the
          green in play: the small rings.
        </p>
      )}
      <div className="likely-actions">
        {found === null ? (
          <button type="button" className="button" disabled={unfit} onClick={() => approach.show(true)}>
            <Crosshair size={16} strokeWidth={1.9} aria-hidden /> Show them
          </button>
        ) : (
          <>
            {!readOnly && off > 0 && (
              <button type="button" className="button" onClick={props.pin}>
                Pin {found.spots.length} {found.spots.length === 1 ? 'ball' : 'balls'} there
              </button>
            )}
            <button type="button" className="button" onClick={() => approach.show(false)}>
              <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Clear
            </button>
          </>
        )}
        <button
          type="button"
          className="button"
          aria-pressed={props.marking}
          onClick={() => props.setMarking(!props.marking)}
        >
          <MapPin size={16} strokeWidth={1.9} aria-hidden /> Mark the place
        </button>
      </div>
    </section>
  );
});

const originOf = (value: string): Origin =>
  value === 'marked' ? 'marked' : value.startsWith('record:') ? `record:${value.slice(7)}` : 'line';
