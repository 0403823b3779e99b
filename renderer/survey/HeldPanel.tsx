import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import { kindWords } from '../../shared/words/coverWords.ts';
import { findRecord } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type {
  AreaRecord,
  AtlasDocument,
  LineRecord,
  SlopeReading,
  SpotHeight,
} from '../../shared/atlas/records.ts';
import { addCollar, joinAreas, lineWords } from '../../shared/atlas/shaping.ts';
import { lineLengthM, perimeterM, polygonAreaM2 } from '../../shared/geometry/ring.ts';
import { overlapOf } from '../../shared/geometry/topology.ts';
import { parseDegrees, parseLength, parseSlopePct } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { areaKinds } from '../../shared/words/vocabulary.ts';
import { Field } from './Field.tsx';
import type { Hand } from './hand.ts';
import type { HandState } from './handState.ts';
import { bearingTyped, lengthTyped } from './making.ts';
import { areaShapes, meets, planeShape, type Thing, widened } from './planeShapes.ts';
import {
  accuracyField,
  areaWordsOf,
  heightField,
  heightUnit,
  sideWords,
  smallUnit,
  thingWords,
  trimmed,
} from './words.ts';

interface HeldPanelProps {
  readonly hand: Hand;
  readonly state: HandState;
  readonly thing: Thing;
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

/** The thing held: what is known of it, and what can be done with it. */
export function HeldPanel(props: HeldPanelProps): React.JSX.Element {
  const { thing, readOnly, hand, state } = props;
  return (
    <section className="held" aria-label="In hand">
      <h2>{titleOf(thing)}</h2>
      {thing.type === 'area' && <AreaFields {...props} thing={thing} />}
      {thing.type === 'line' && <LineFields {...props} thing={thing} />}
      {thing.type === 'spotHeight' && <HeightFields {...props} thing={thing} />}
      {thing.type === 'slopeReading' && <SlopeFields {...props} thing={thing} />}
      {thing.type === 'landmark' && (
        <Field
          label="Name"
          value={thing.name}
          readOnly={readOnly}
          commit={(name) => props.edit(putRecords(`named ${thingWords(thing)}`, [{ ...thing, name }]))}
        />
      )}
      {(thing.type === 'holeLocation' || thing.type === 'ballPosition') && (
        <>
          <Field
            label="Label"
            value={thing.label}
            readOnly={readOnly}
            commit={(label) => props.edit(putRecords(`renamed ${thingWords(thing)}`, [{ ...thing, label }]))}
          />
          <Field
            label="Name"
            value={thing.name}
            readOnly={readOnly}
            commit={(name) => props.edit(putRecords(`named ${thingWords(thing)}`, [{ ...thing, name }]))}
          />
        </>
      )}
      {state.trouble !== null && (
        <p className="field-trouble" role="alert">
          {state.trouble.message}
        </p>
      )}
      {!readOnly && (
        <>
          {state.corner !== null && (
            <p className="held-actions">
              <button type="button" className="link-button" onClick={() => hand.putCornerIn()}>
                Put a corner after this one
              </button>
              <button type="button" className="link-button" onClick={() => hand.takeCornerOut()}>
                Take this corner out
              </button>
            </p>
          )}
          <div className="held-actions">
            <button type="button" className="link-button" onClick={() => hand.copy()}>
              Copy
            </button>
            {(thing.type === 'area' || thing.type === 'line') && <TurnField hand={hand} />}
            <button type="button" className="link-button" onClick={() => hand.takeOut()}>
              <Trash2 size={15} strokeWidth={1.9} aria-hidden /> Take out
            </button>
          </div>
          <p className="hint">
            Drag it, or press the arrow keys. <kbd>[</kbd> <kbd>]</kbd> walk its corners, <kbd>Delete</kbd>{' '}
            takes out.
          </p>
        </>
      )}
    </section>
  );
}

function titleOf(thing: Thing): string {
  const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
  switch (thing.type) {
    case 'area':
      return thing.name === ''
        ? capital(kindWords[thing.kind])
        : `${capital(kindWords[thing.kind])} ${thing.name}`;
    case 'line':
      return capital(lineWords[thing.kind]);
    case 'spotHeight':
      return 'Spot height';
    case 'slopeReading':
      return 'Slope reading';
    case 'landmark':
      return thing.name === '' ? 'Landmark' : thing.name;
    default:
      return capital(thingWords(thing));
  }
}

type Of<T> = Omit<HeldPanelProps, 'thing'> & { readonly thing: T };

function AreaFields({
  thing,
  document,
  holeId,
  units,
  readOnly,
  edit,
  hand,
}: Of<AreaRecord>): React.JSX.Element {
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
      overlapOf(polygon, shape.polygon).length > 0,
  );
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
      <div className="field">
        <label htmlFor="held-kind">Kind</label>
        <select
          id="held-kind"
          value={thing.kind}
          disabled={readOnly}
          onChange={({ target }) => {
            const kind = areaKinds.find((one) => one === target.value) ?? thing.kind;
            put(`made ${words} ${kindWords[kind]}`, { kind });
          }}
        >
          {areaKinds.map((kind) => (
            <option key={kind} value={kind}>
              {kindWords[kind]}
            </option>
          ))}
        </select>
      </div>
      {thing.kind === 'bunker' && height('Lip height', 'lipHeightM', 'the lip')}
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
            Part it
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
      {!readOnly && (
        <CollarField
          units={units}
          put={(widthM) =>
            attempt(() => {
              const id = crypto.randomUUID();
              edit(addCollar(document, thing, thing.kind === 'fringe' ? 'approach' : 'fringe', widthM, id));
              hand.hold(id);
            })
          }
          trouble={trouble}
          kind={thing.kind === 'fringe' ? 'approach' : 'fringe'}
        />
      )}
    </>
  );
}

interface CollarFieldProps {
  readonly units: UnitsPreference;
  readonly kind: 'fringe' | 'approach';
  readonly put: (widthM: number) => void;
  readonly trouble: string | null;
}

/** A band of a stated width round an area. */
function CollarField({ units, kind, put, trouble }: CollarFieldProps): React.JSX.Element {
  const [typed, setTyped] = useState('1');
  const [unread, setUnread] = useState<string | null>(null);
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const run = (): void => {
    try {
      put(parseLength(typed, unit, units.paceM, 'Width'));
      setUnread(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setUnread(error.message);
    }
  };
  const told = unread ?? trouble;
  return (
    <div className="field">
      <label htmlFor="collar-width">{kind === 'fringe' ? 'Fringe of' : 'Approach of'}</label>
      <span className="field-box with-button">
        <input
          id="collar-width"
          type="text"
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') run();
          }}
        />
        <span className="field-unit" aria-hidden>
          {unit}
        </span>
        <button type="button" className="link-button" onClick={run}>
          Put round it
        </button>
      </span>
      {told !== null && (
        <p className="field-trouble" role="alert">
          {told}
        </p>
      )}
    </div>
  );
}

/** Turns the held thing by typed degrees, clockwise. */
function TurnField({ hand }: { readonly hand: Hand }): React.JSX.Element {
  const [typed, setTyped] = useState('');
  return (
    <span className="turn-field">
      <input
        type="text"
        aria-label="Turn by degrees, clockwise"
        placeholder="15°"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
      />
      <button
        type="button"
        className="link-button"
        onClick={() => {
          try {
            hand.turnBy(parseDegrees(typed === '' ? '15' : typed, 'Turn'));
          } catch (error) {
            if (!(error instanceof InputProblem)) throw error;
            setTyped('');
          }
        }}
      >
        Turn
      </button>
    </span>
  );
}

function LineFields({ thing, document, units, readOnly, edit }: Of<LineRecord>): React.JSX.Element {
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

function HeightFields({ thing, units, readOnly, edit }: Of<SpotHeight>): React.JSX.Element {
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

function SlopeFields({ thing, readOnly, edit }: Of<SlopeReading>): React.JSX.Element {
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
