import { useState } from 'react';
import { type Edit, putRecords, useRecord as recordInUse } from '../../shared/atlas/edits.ts';
import type { ConditionsRecord } from '../../shared/atlas/records.ts';
import { greenSpeed, wind, withUnit } from '../../shared/units/format.ts';
import { parseSpeedMps, parseStimpFt } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { moistures } from '../../shared/words/vocabulary.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface DayFormProps {
  readonly day: ConditionsRecord;
  readonly days: readonly ConditionsRecord[];
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

/** Steps of firmness that can be told apart under foot. */
const firmnesses = [
  { value: 0.1, words: 'soft' },
  { value: 0.3, words: 'rather soft' },
  { value: 0.5, words: 'medium' },
  { value: 0.7, words: 'rather firm' },
  { value: 0.9, words: 'firm' },
] as const;

/** Usual sorts of day, each with the numbers it stands for. */
const presets = [
  { name: 'dewy morning', words: '8 ft, soft, wet', numbers: { stimpFt: 8, firmness: 0.3, moisture: 'wet' } },
  { name: 'soft', words: '9 ft, soft, damp', numbers: { stimpFt: 9, firmness: 0.2, moisture: 'damp' } },
  { name: 'usual', words: '9½ ft, medium, dry', numbers: { stimpFt: 9.5, firmness: 0.5, moisture: 'dry' } },
  {
    name: 'firm and fast',
    words: '11½ ft, firm, dry',
    numbers: { stimpFt: 11.5, firmness: 0.9, moisture: 'dry' },
  },
] as const;

/** The day: which one, and its green speed, ground, moisture and wind. */
export function DayForm({ day, days, units, readOnly, edit }: DayFormProps): React.JSX.Element {
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const change = (what: string, changed: () => Partial<ConditionsRecord>): void => {
    try {
      edit(putRecords(`set the ${what}`, [{ ...day, ...changed() }]));
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  const listed = firmnesses.some(({ value }) => value === day.firmness);
  return (
    <>
      <div className="side-head">
        <h2>Day</h2>
      </div>
      <fieldset className="form" disabled={readOnly}>
        <label>
          <span>Like</span>
          <select
            value=""
            onChange={({ target }) => {
              const preset = presets.find(({ name }) => name === target.value);
              if (preset !== undefined) {
                const { name, numbers } = preset;
                edit(putRecords(`made the day ${name}`, [{ ...day, ...numbers }]));
              }
            }}
          >
            <option value="">its own numbers</option>
            {presets.map(({ name, words }) => (
              <option key={name} value={name}>
                {name}: {words}
              </option>
            ))}
          </select>
        </label>
        {days.length > 1 && (
          <label>
            <span>Which</span>
            <select
              value={day.id}
              onChange={({ target }) => edit(recordInUse('chose another day', 'conditions', target.value))}
            >
              {days.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        )}
        <label>
          <span>Green speed</span>
          <TextField
            inputMode="decimal"
            value={withUnit(greenSpeed(day.stimpFt))}
            commit={(typed) => change('green speed', () => ({ stimpFt: parseStimpFt(typed, 'Green speed') }))}
          />
        </label>
        <label>
          <span>Ground</span>
          <select
            value={day.firmness}
            onChange={({ target }) => change('ground', () => ({ firmness: Number(target.value) }))}
          >
            {!listed && <option value={day.firmness}>{day.firmness} of 1</option>}
            {firmnesses.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Moisture</span>
          <select
            value={day.moisture}
            onChange={({ target }) =>
              change('moisture', () => ({
                moisture: moistures.find((one) => one === target.value) ?? day.moisture,
              }))
            }
          >
            {moistures.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <label>
          <span>Wind</span>
          <TextField
            inputMode="decimal"
            value={withUnit(wind(day.windMps, units))}
            commit={(typed) =>
              change('wind', () => ({
                windMps: parseSpeedMps(typed, units.system === 'yards' ? 'mph' : 'm/s', 'Wind'),
              }))
            }
          />
        </label>
      </fieldset>
      {trouble !== null && <Trouble trouble={trouble} />}
    </>
  );
}
