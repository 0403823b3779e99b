import { putRecords } from '../../shared/atlas/edits.ts';
import type { AreaRecord } from '../../shared/atlas/records.ts';
import { grainShares } from '../../shared/terrain/grain.ts';
import { type GrainStrength, grainStrengths } from '../../shared/words/vocabulary.ts';
import { Field } from './Field.tsx';
import type { HeldProps } from './heldProps.ts';
import { bearingTyped } from './making.ts';
import { SelectField } from './SelectField.tsx';
import { thingWords } from './words.ts';

const words: Readonly<Record<GrainStrength, string>> = { slight: 'Slight', strong: 'Strong' };

/** Whether the grass of a green leans one way, and which; read by eye, so none unless somebody says so. */
export function GrainFields({
  green,
  readOnly,
  edit,
}: Pick<HeldProps<AreaRecord>, 'readOnly' | 'edit'> & { readonly green: AreaRecord }): React.JSX.Element {
  const { grain, ...plain } = green;
  const what = `the grain of ${thingWords(green)}`;
  return (
    <>
      <SelectField
        label="Grain"
        value={grain?.strength ?? ''}
        options={[['', 'None'], ...grainStrengths.map((one) => [one, words[one]] as const)]}
        readOnly={readOnly}
        choose={(strength) =>
          edit(
            putRecords(strength === '' ? `took away ${what}` : `set ${what}`, [
              strength === '' ? plain : { ...plain, grain: { towardsDeg: grain?.towardsDeg ?? 0, strength } },
            ]),
          )
        }
      />
      {grain !== undefined && (
        <>
          <Field
            label="Leans to"
            unit="°"
            value={String(grain.towardsDeg)}
            readOnly={readOnly}
            commit={(typed) =>
              edit(
                putRecords(`changed ${what}`, [
                  { ...green, grain: { ...grain, towardsDeg: bearingTyped(typed, 'Leans to') } },
                ]),
              )
            }
          />
          <p className="held-facts">
            Putts run on with the grain, stop sooner against it and drift across it: by{' '}
            {100 * grainShares[grain.strength]} % of what slows a ball. That share is assumed; look at the
            grass before you trust it.
          </p>
        </>
      )}
    </>
  );
}
