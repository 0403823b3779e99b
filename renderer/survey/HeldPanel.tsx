import { Trash2 } from 'lucide-react';
import { putRecords } from '../../shared/atlas/edits.ts';
import { lineWords } from '../../shared/atlas/shaping.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import { Field } from './Field.tsx';
import { thingsOf } from './group.ts';
import { HeldArea } from './HeldArea.tsx';
import { HeldGroup } from './HeldGroup.tsx';
import { HeldLine } from './HeldLine.tsx';
import type { HeldProps } from './heldProps.ts';
import { HeldHeight, HeldSlope } from './HeldReading.tsx';
import type { Thing } from './planeShapes.ts';
import { TurnField } from './TurnField.tsx';
import { thingWords } from './words.ts';

/** The thing held: what is known of it, and what can be done with it. */
export function HeldPanel(props: HeldProps): React.JSX.Element {
  const { thing, readOnly, hand, state, document, units } = props;
  if (state.others.length > 0) {
    const things = thingsOf(document, [thing.id, ...state.others]);
    return <HeldGroup {...{ hand, state, things, document, units, readOnly }} />;
  }
  return (
    <section className="held" aria-label="Held">
      <h2>{titleOf(thing)}</h2>
      {thing.type === 'area' && <HeldArea {...props} thing={thing} />}
      {thing.type === 'line' && <HeldLine {...props} thing={thing} />}
      {thing.type === 'spotHeight' && <HeldHeight {...props} thing={thing} />}
      {thing.type === 'slopeReading' && <HeldSlope {...props} thing={thing} />}
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
            <button type="button" className="link-button" onClick={() => hand.holdAllLike()}>
              Hold all like it
            </button>
            <button type="button" className="link-button" onClick={() => hand.takeOut()}>
              <Trash2 size={15} strokeWidth={1.9} aria-hidden /> Take out
            </button>
          </div>
          <p className="hint">
            Drag it, or press the arrow keys.{' '}
            {(thing.type === 'area' || thing.type === 'line') && (
              <>
                <kbd>[</kbd> <kbd>]</kbd> walk its corners,{' '}
              </>
            )}
            <kbd>,</kbd> <kbd>.</kbd> walk the things on the sheet; with <kbd>Shift</kbd>, a click or a frame
            pulled takes more.
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
      // A name that says the kind already is enough.
      return thing.name.toLowerCase().includes(kindWords[thing.kind])
        ? thing.name
        : capital(`${kindWords[thing.kind]} ${thing.name}`.trim());
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
