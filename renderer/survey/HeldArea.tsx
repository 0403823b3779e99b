import { useState } from 'react';
import { findRecord } from '../../shared/atlas/document.ts';
import { putRecords } from '../../shared/atlas/edits.ts';
import type { AreaRecord } from '../../shared/atlas/records.ts';
import { addCollar, joinAreas } from '../../shared/atlas/shaping.ts';
import { perimeterM, polygonAreaM2 } from '../../shared/geometry/ring.ts';
import { unionOf } from '../../shared/geometry/topology.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { type AreaKind, areaKinds } from '../../shared/words/vocabulary.ts';
import { CollarField } from './CollarField.tsx';
import { Field } from './Field.tsx';
import { GrainFields } from './GrainFields.tsx';
import type { HeldProps } from './heldProps.ts';
import { lengthTyped } from './making.ts';
import { SelectField } from './SelectField.tsx';
import { areaShapes, meets, planeShape, widened } from './planeShapes.ts';
import { areaWordsOf, heightField, heightUnit, sideWords, thingWords } from './words.ts';

/** What is mown in a band round an area: nothing round most. */
const collarOf: Partial<Readonly<Record<AreaKind, 'fringe' | 'approach'>>> = {
  green: 'fringe',
  fringe: 'approach',
};

/** An area held: its kind and measures, and cutting, parting, joining and a collar round it. */
export function HeldArea({
  thing,
  document,
  holeId,
  units,
  readOnly,
  edit,
  hand,
}: HeldProps<AreaRecord>): React.JSX.Element {
  const [trouble, setTrouble] = useState<string | null>(null);
  const shape = planeShape(document, thing);
  const put = (annotation: string, change: Partial<AreaRecord>): void =>
    edit(putRecords(annotation, [{ ...thing, ...change }]));
  const words = thingWords(thing);
  const attempt = (work: () => void): void => {
    try {
      work();
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  const neighbours = areaShapes(document).filter(
    ({ record, box, polygon }) =>
      record.id !== thing.id &&
      record.kind === thing.kind &&
      meets(box, widened(shape.box, 0.05)) &&
      unionOf([polygon, shape.polygon]).length === 1,
  );
  const collar = collarOf[thing.kind];
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);
  const height = (
    label: string,
    member: 'lipHeightM' | 'treeHeightM' | 'canopyBaseM',
    what: string,
  ): React.JSX.Element => (
    <Field
      label={label}
      unit={heightUnit(units)}
      value={heightField(thing[member], units)}
      readOnly={readOnly}
      commit={(typed) => put(`set ${what} of ${words}`, { [member]: lengthTyped(typed, units, label) })}
    />
  );
  return (
    <>
      <Field
        label="Name"
        value={thing.name}
        readOnly={readOnly}
        commit={(name) => put(`named ${words}`, { name })}
      />
      <SelectField
        label="Kind"
        value={thing.kind}
        options={areaKinds.map((kind) => [kind, kindWords[kind]] as const)}
        readOnly={readOnly}
        choose={(kind) => put(`made ${words} ${kindWords[kind]}`, { kind })}
      />
      {thing.kind === 'bunker' && height('Lip height', 'lipHeightM', 'the lip')}
      {thing.kind === 'green' && <GrainFields green={thing} readOnly={readOnly} edit={edit} />}
      {thing.kind === 'tree' && (
        <>
          {height('Height', 'treeHeightM', 'the height')}
          {height('Crown begins', 'canopyBaseM', 'the crown')}
        </>
      )}
      <p className="held-facts">
        Around {sideWords(perimeterM(shape.polygon[0] ?? []), units)}, area{' '}
        {areaWordsOf(polygonAreaM2(shape.polygon), units)}
        {thing.rings.length > 1 && `, ${String(thing.rings.length - 1)} cut out`}
      </p>
      {!readOnly && (
        <div className="held-actions">
          <button
            type="button"
            className="link-button"
            onClick={() =>
              hand.drawFor({ kind: 'cut', areaId: thing.id }, thing.kind === 'tree' ? 'bare' : thing.kind)
            }
          >
            Cut a piece out
          </button>
          <button
            type="button"
            className="link-button"
            onClick={() => hand.drawFor({ kind: 'split', areaId: thing.id }, 'ridge')}
          >
            Part in two
          </button>
          {neighbours.length > 0 && (
            <button
              type="button"
              className="link-button"
              onClick={() =>
                attempt(() => edit(joinAreas(document, [thing, ...neighbours.map(({ record }) => record)])))
              }
            >
              Join with {neighbours.length === 1 ? 'its neighbour' : 'its neighbours'}
            </button>
          )}
          {thing.kind === 'green' && hole !== undefined && hole.greenId !== thing.id && (
            <button
              type="button"
              className="link-button"
              onClick={() =>
                edit(putRecords(`gave hole ${hole.label} its green`, [{ ...hole, greenId: thing.id }]))
              }
            >
              Green of {hole.label}
            </button>
          )}
        </div>
      )}
      {collar !== undefined && !readOnly && (
        <CollarField
          units={units}
          put={(widthM) =>
            attempt(() => {
              const id = crypto.randomUUID();
              edit(addCollar(document, thing, collar, widthM, id));
              hand.hold(id);
            })
          }
          trouble={trouble}
          kind={collar}
        />
      )}
    </>
  );
}
