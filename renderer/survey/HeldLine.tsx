import { putRecords } from '../../shared/atlas/edits.ts';
import type { LineRecord } from '../../shared/atlas/records.ts';
import { lineLengthM } from '../../shared/geometry/ring.ts';
import { Field } from './Field.tsx';
import type { HeldProps } from './heldProps.ts';
import { lengthTyped } from './making.ts';
import { planeShape } from './planeShapes.ts';
import { heightField, heightUnit, sideWords, thingWords } from './words.ts';

/** A line held: its name, its height where it has one, and how long it is. */
export function HeldLine({
  thing,
  document,
  units,
  readOnly,
  edit,
}: HeldProps<LineRecord>): React.JSX.Element {
  const words = thingWords(thing);
  const put = (annotation: string, change: Partial<LineRecord>): void =>
    edit(putRecords(annotation, [{ ...thing, ...change }]));
  return (
    <>
      <Field
        label="Name"
        value={thing.name}
        readOnly={readOnly}
        commit={(name) => put(`named ${words}`, { name })}
      />
      {(thing.kind === 'contour' || thing.kind === 'wall') && (
        <Field
          label="Height"
          unit={heightUnit(units)}
          value={heightField(thing.heightM, units)}
          readOnly={readOnly}
          commit={(typed) =>
            put(`set the height of ${words}`, { heightM: lengthTyped(typed, units, 'Height') })
          }
        />
      )}
      <p className="held-facts">Length {sideWords(lineLengthM(planeShape(document, thing).points), units)}</p>
    </>
  );
}
