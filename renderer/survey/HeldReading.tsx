import { putRecords } from '../../shared/atlas/edits.ts';
import type { SlopeReading, SpotHeight } from '../../shared/atlas/records.ts';
import { parseLength, parseSlopePct } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { Field } from './Field.tsx';
import type { HeldProps } from './heldProps.ts';
import { bearingTyped } from './making.ts';
import { accuracyField, heightField, heightUnit, smallUnit, trimmed } from './words.ts';

/** A spot height held: the height and how good it is. */
export function HeldHeight({ thing, units, readOnly, edit }: HeldProps<SpotHeight>): React.JSX.Element {
  return (
    <>
      <Field
        label="Height"
        unit={heightUnit(units)}
        value={heightField(thing.heightM, units)}
        readOnly={readOnly}
        commit={(typed) => {
          const heightM = parseLength(typed, heightUnit(units), units.paceM, 'Height');
          edit(putRecords('changed a spot height', [{ ...thing, heightM }]));
        }}
      />
      <Field
        label="Good to ±"
        unit={smallUnit(units)}
        value={accuracyField(thing.accuracyM, units)}
        readOnly={readOnly}
        commit={(typed) => {
          const accuracyM = positive(parseLength(typed, smallUnit(units), units.paceM, 'Good to'));
          edit(putRecords('changed how good a spot height is', [{ ...thing, accuracyM }]));
        }}
      />
    </>
  );
}

/** A slope reading held: how steep, which way it falls and how good it is. */
export function HeldSlope({ thing, readOnly, edit }: HeldProps<SlopeReading>): React.JSX.Element {
  const put = (annotation: string, change: Partial<SlopeReading>): void =>
    edit(putRecords(annotation, [{ ...thing, ...change }]));
  return (
    <>
      <Field
        label="Slope"
        unit="%"
        value={trimmed(thing.slopePct, 2)}
        readOnly={readOnly}
        commit={(typed) => put('changed a slope reading', { slopePct: parseSlopePct(typed, 'Slope') })}
      />
      <Field
        label="Falls towards"
        unit="°"
        value={trimmed(thing.downhillBearingDeg, 1)}
        readOnly={readOnly}
        commit={(typed) =>
          put('changed where a slope falls', { downhillBearingDeg: bearingTyped(typed, 'Falls towards') })
        }
      />
      <Field
        label="Good to ±"
        unit="%"
        value={trimmed(thing.accuracyPct, 2)}
        readOnly={readOnly}
        commit={(typed) =>
          put('changed how good a slope reading is', {
            accuracyPct: positive(parseSlopePct(typed, 'Good to')),
          })
        }
      />
    </>
  );
}

function positive(value: number): number {
  if (value > 0) return value;
  throw new InputProblem(
    'not-positive',
    'It has to be more than nothing.',
    'Good to',
    'Give how far a reading may be out.',
  );
}
