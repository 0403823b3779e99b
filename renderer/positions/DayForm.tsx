import { ChevronDown, Plus, Trash2 } from 'lucide-react';
import { memo, useState } from 'react';
import {
  type Edit,
  putRecords,
  removeRecords,
  together,
  useRecord as recordInUse,
} from '../../shared/atlas/edits.ts';
import type { ConditionsRecord } from '../../shared/atlas/records.ts';
import {
  compassPoint,
  greenSpeed,
  heightAboveSea,
  temperature,
  wind,
  withUnit,
} from '../../shared/units/format.ts';
import {
  parseHeightAboveSeaM,
  parseSpeedMps,
  parseStimpFt,
  parseTemperatureC,
} from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { firmnessSteps } from '../../shared/words/firmnessWord.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { moistures } from '../../shared/words/vocabulary.ts';
import { Menu } from '../ui/Menu.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { dayNumbers, dayPresets, presetOf } from './dayPresets.ts';

interface DayFormProps {
  readonly day: ConditionsRecord;
  readonly days: readonly ConditionsRecord[];
  /** Pin sheets there are. */
  readonly sheets: readonly string[];
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

const EVERY_FLAG = '';
const WIND_POINTS_DEG = Array.from({ length: 8 }, (_, i) => 45 * i);

/** The day: which one, its green speed, ground, moisture, wind, air and flagstick, and the pin sheet that is in play. */
export const DayForm = memo(function DayForm({
  day,
  days,
  sheets,
  units,
  readOnly,
  edit,
}: DayFormProps): React.JSX.Element {
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  // What was typed and refused goes with the numbers it was to be one of.
  const [taken, setTaken] = useState(0);
  const change = (what: string, changed: () => Partial<ConditionsRecord>): void =>
    put(what, () => ({ ...day, ...changed() }));
  /** The record whole, for what can also be left unsaid. */
  const put = (what: string, made: () => ConditionsRecord): void => {
    try {
      edit(putRecords(`set the ${what}`, [made()]));
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  const preset = presetOf(day);
  const { sheet, ...plain } = day;
  const { heightAboveSeaM, ...withoutHeight } = day;
  const { temperatureC, ...withoutTemperature } = day;
  return (
    <>
      <div className="side-head">
        <h2>Day</h2>
        {!readOnly && (
          <Menu
            className="button"
            align="end"
            groups={[
              {
                title: 'Take the numbers of',
                items: dayPresets.map(({ name, numbers }) => ({
                  key: name,
                  label: name,
                  hint: dayNumbers(numbers),
                  checked: preset?.name === name,
                  run: () => {
                    edit(putRecords(`made the day ${name}`, [{ ...day, ...numbers }]));
                    setTrouble(null);
                    setTaken(taken + 1);
                  },
                })),
              },
            ]}
            button={
              <>
                Make it like <ChevronDown size={14} strokeWidth={1.9} aria-hidden />
              </>
            }
          />
        )}
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      <fieldset key={taken} className="form" disabled={readOnly}>
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
          <span>Called</span>
          <TextField value={day.name} commit={(name) => change('name of the day', () => ({ name }))} />
        </label>
        <label>
          <span>Green speed</span>
          <TextField
            putRight={() => setTrouble(null)}
            inputMode="decimal"
            value={withUnit(greenSpeed(day.stimpFt))}
            commit={(typed) => change('green speed', () => ({ stimpFt: parseStimpFt(typed, 'Green speed') }))}
          />
        </label>
        <label>
          <span>Firmness</span>
          <select
            value={day.firmness}
            onChange={({ target }) => change('firmness', () => ({ firmness: Number(target.value) }))}
          >
            {!firmnessSteps.some(({ value }) => value === day.firmness) && (
              <option value={day.firmness}>{day.firmness} of 1</option>
            )}
            {firmnessSteps.map(({ value, words }) => (
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
            putRight={() => setTrouble(null)}
            inputMode="decimal"
            value={withUnit(wind(day.windMps, units))}
            commit={(typed) =>
              change('wind', () => ({
                windMps: parseSpeedMps(typed, units.system === 'yards' ? 'mph' : 'm/s', 'Wind'),
              }))
            }
          />
        </label>
        <label>
          <span>Wind from</span>
          <select
            value={day.windFromDeg}
            onChange={({ target }) => change('wind', () => ({ windFromDeg: Number(target.value) }))}
          >
            {!WIND_POINTS_DEG.includes(day.windFromDeg) && (
              <option value={day.windFromDeg}>{Math.round(day.windFromDeg)}°</option>
            )}
            {WIND_POINTS_DEG.map((degrees) => (
              <option key={degrees} value={degrees}>
                {compassPoint(degrees)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Flagstick</span>
          <select
            value={day.flagstickIn === true ? 'in' : 'out'}
            onChange={({ target }) => change('flagstick', () => ({ flagstickIn: target.value === 'in' }))}
          >
            <option value="out">out</option>
            <option value="in">left in, putts too</option>
          </select>
        </label>
        <label>
          <span>Altitude</span>
          <TextField
            putRight={() => setTrouble(null)}
            value={heightAboveSeaM === undefined ? '' : withUnit(heightAboveSea(heightAboveSeaM, units))}
            placeholder="not said"
            commit={(typed) =>
              put('altitude', () =>
                typed === ''
                  ? withoutHeight
                  : {
                      ...day,
                      heightAboveSeaM: parseHeightAboveSeaM(
                        typed,
                        units.system === 'yards' ? 'ft' : 'm',
                        'Altitude',
                      ),
                    },
              )
            }
          />
        </label>
        <label>
          <span>Temperature</span>
          <TextField
            putRight={() => setTrouble(null)}
            value={temperatureC === undefined ? '' : withUnit(temperature(temperatureC, units))}
            placeholder="not said"
            commit={(typed) =>
              put('temperature', () =>
                typed === ''
                  ? withoutTemperature
                  : {
                      ...day,
                      temperatureC: parseTemperatureC(
                        typed,
                        units.system === 'yards' ? 'F' : 'C',
                        'Temperature',
                      ),
                    },
              )
            }
          />
        </label>
        {sheets.length > 0 && (
          <label>
            <span>Pin sheet</span>
            <select
              value={sheet ?? EVERY_FLAG}
              onChange={({ target }) =>
                edit(
                  putRecords('chose a pin sheet', [
                    { ...plain, ...(target.value !== EVERY_FLAG && { sheet: target.value }) },
                  ]),
                )
              }
            >
              <option value={EVERY_FLAG}>every flag</option>
              {sheets.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        )}
      </fieldset>
      {!readOnly && (
        <div className="day-actions">
          <button type="button" className="button" onClick={() => edit(anotherDay(day, days))}>
            <Plus size={16} strokeWidth={1.9} aria-hidden /> Another day
          </button>
          {days.length > 1 && (
            <button type="button" className="button" onClick={() => edit(withoutDay(day, days))}>
              <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Take the day away
            </button>
          )}
        </div>
      )}
    </>
  );
});

/** A day with the numbers of another, in use from now on. */
function anotherDay(day: ConditionsRecord, days: readonly ConditionsRecord[]): Edit {
  const taken = new Set(days.map(({ name }) => name));
  let count = days.length + 1;
  while (taken.has(`Day ${count}`)) count += 1;
  const id = crypto.randomUUID();
  return together('added a day', [
    putRecords('added a day', [{ ...day, id, name: `Day ${count}`, inUse: false }]),
    recordInUse('chose the new day', 'conditions', id),
  ]);
}

function withoutDay(day: ConditionsRecord, days: readonly ConditionsRecord[]): Edit {
  const next = days.find(({ id }) => id !== day.id);
  const gone = removeRecords(`took ${day.name} away`, [day.id]);
  return next === undefined
    ? gone
    : together(`took ${day.name} away`, [gone, recordInUse('chose another day', 'conditions', next.id)]);
}
