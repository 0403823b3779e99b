import { useId } from 'react';
import { putRecords } from '../../shared/atlas/edits.ts';
import type { AreaRecord } from '../../shared/atlas/records.ts';
import { type GrainStrength, grainStrengths } from '../../shared/words/vocabulary.ts';
import { Field } from './Field.tsx';
import type { HeldProps } from './heldProps.ts';
import { bearingTyped } from './making.ts';
import { thingWords } from './words.ts';

const words: Readonly<Record<GrainStrength, string>> = { slight: 'Slight', strong: 'Strong' };

/** Whether the grass of a green leans one way, and which; read by eye, so none unless somebody says so. */
export function GrainFields({
  green,
  readOnly,
  edit,
}: Pick<HeldProps<AreaRecord>, 'readOnly' | 'edit'> & { readonly green: AreaRecord }): React.JSX.Element {
  const id = useId();
  const { grain, ...plain } = green;
  const what = `the grain of ${thingWords(green)}`;
  return (
    <>
      <div className="field">
        <label htmlFor={id}>Grain</label>
        <select
          id={id}
          value={grain?.strength ?? ''}
          disabled={readOnly}
          onChange={({ target }) => {
            const strength = grainStrengths.find((one) => one === target.value);
            edit(
              putRecords(strength === undefined ? `took away ${what}` : `set ${what}`, [
                strength === undefined
                  ? plain
                  : { ...plain, grain: { towardsDeg: grain?.towardsDeg ?? 0, strength } },
              ]),
            );
          }}
        >
          <option value="">None</option>
          {grainStrengths.map((strength) => (
            <option key={strength} value={strength}>
              {words[strength]}
            </option>
          ))}
        </select>
      </div>
      {grain !== undefined && (
        <>
          <Field
            label="Grows towards"
            unit="°"
            value={String(grain.towardsDeg)}
            readOnly={readOnly}
            commit={(typed) =>
              edit(
                putRecords(`changed ${what}`, [
                  { ...green, grain: { ...grain, towardsDeg: bearingTyped(typed, 'Grows towards') } },
                ]),
              )
            }
          />
          <p className="held-facts">
            Putts run on with the grain, stop sooner against it and drift across it: by{' '}
            {grain.strength === 'slight' ? '5' : '10'} % of what slows a ball. That share is assumed; look at
            the grass before you trust it.
          </p>
        </>
      )}
    </>
  );
}
