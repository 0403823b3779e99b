import { useEffect, useRef, useState } from 'react';
import { onPlane } from '../../../shared/geometry/affine.ts';
import { distanceM } from '../../../shared/geometry/ring.ts';
import { yardsFromMetres } from '../../../shared/units/conversions.ts';
import { feetAndInches } from '../../../shared/units/format.ts';
import { decimals } from '../../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../../shared/units/preference.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { openDialog } from '../../store/dialogs.ts';
import { Field, TypedField } from '../Field.tsx';
import { positionTyped } from '../NewAtlasDialog.tsx';
import { trimmed } from '../words.ts';
import type { PlacingHand } from './placingHand.ts';
import type { PlacingState, PlacingWay } from './placingState.ts';
import './placing.css';
import { outlineOf, turnedDeg } from './placingView.ts';

interface PlacingPanelProps {
  readonly hand: PlacingHand;
  readonly state: PlacingState;
  readonly units: UnitsPreference;
  readonly placed: boolean;
  /** A map can be seen below. */
  readonly overMap: boolean;
}

const ways: Readonly<Record<PlacingWay, string>> = {
  move: 'Move and turn',
  points: 'Known points',
  distance: 'Known distance',
};

/** What is being placed, how, and how well known points agree. */
export function PlacingPanel(props: PlacingPanelProps): React.JSX.Element | null {
  const { hand, state, units, placed, overMap } = props;
  const { subject, way, trouble, note } = state;
  if (subject === null) return null;
  const offered: readonly PlacingWay[] =
    subject.kind === 'source'
      ? []
      : subject.kind === 'sheet'
        ? ['move', 'points']
        : ['move', 'points', 'distance'];
  return (
    <section className="held placing" aria-label="Placing">
      <h2>{titleOf(state)}</h2>
      {note !== '' && <p className="hint">{note}</p>}
      {offered.length > 0 && (
        <div className="placing-ways" role="group" aria-label="Place it by">
          {offered.map((one) => (
            <button
              key={one}
              type="button"
              className="button"
              aria-pressed={way === one}
              onClick={() => hand.choose(one)}
            >
              {ways[one]}
            </button>
          ))}
        </div>
      )}
      {subject.kind === 'sheet' && !overMap && (
        <p className="hint">
          No map is on.{' '}
          <button type="button" className="link-button" onClick={() => openDialog('layers')}>
            Choose one
          </button>
        </p>
      )}
      {way === 'move' && subject.kind !== 'source' && (
        <MoveFields hand={hand} state={state} units={units} isPicture={subject.kind === 'picture'} />
      )}
      {way === 'points' && (
        <KnownPoints hand={hand} state={state} units={units} onEarth={placed || subject.kind === 'sheet'} />
      )}
      {way === 'distance' && <KnownDistance hand={hand} state={state} units={units} />}
      {trouble !== null && (
        <p className="field-trouble" role="alert">
          {trouble.message.endsWith(trouble.remedy)
            ? trouble.message
            : `${trouble.message} ${trouble.remedy}`}
        </p>
      )}
      {subject.kind === 'picture' && (
        <label className="fade">
          Opacity
          <input
            type="range"
            min={10}
            max={100}
            step={5}
            value={Math.round(state.opacity * 100)}
            onChange={({ target }) => hand.fade(Number(target.value) / 100)}
          />
          <span>{Math.round(state.opacity * 100)} %</span>
        </label>
      )}
      <Hints state={state} units={units} />
      <div className="held-actions">
        <button type="button" className="button filled" onClick={() => hand.finish()}>
          Done
        </button>
        <button type="button" className="link-button" onClick={() => hand.letGo()}>
          Leave it as it was
        </button>
      </div>
    </section>
  );
}

function titleOf({ subject }: PlacingState): string {
  switch (subject?.kind) {
    case 'picture':
      return 'Placing the picture';
    case 'sheet':
      return 'Placing the atlas';
    default:
      return `Shifting ${subject?.name ?? ''}`;
  }
}

interface PartProps {
  readonly hand: PlacingHand;
  readonly state: PlacingState;
  readonly units: UnitsPreference;
}

function MoveFields({
  hand,
  state,
  units,
  isPicture,
}: PartProps & { isPicture: boolean }): React.JSX.Element {
  const [left, right] = outlineOf(state.outline, state.affine);
  const wideM = left === undefined || right === undefined ? 0 : distanceM(left, right);
  return (
    <>
      <Field
        label="Turned"
        unit="°"
        value={trimmed(turnedDeg(state.affine), 1)}
        commit={(typed) => hand.turnTo(typed)}
      />
      {isPicture && (
        <Field
          label="Width"
          unit={units.system === 'yards' ? 'yd' : 'm'}
          value={trimmed(units.system === 'yards' ? yardsFromMetres(wideM) : wideM, 1)}
          commit={(typed) => hand.widthTo(typed)}
        />
      )}
    </>
  );
}

/** A miss: feet and inches, or metres. */
const missWords = (missM: number, units: UnitsPreference): string =>
  units.system === 'yards' ? feetAndInches(missM, units) : `${decimals(missM, 2)} m`;

function KnownPoints({
  hand,
  state,
  units,
  onEarth,
}: PartProps & { readonly onEarth: boolean }): React.JSX.Element {
  const { pairs, missesM, rmsM, keepShape, subject } = state;
  const waiting = pairs.at(-1)?.at === null;
  const known = pairs.filter(({ at }) => at !== null).length;
  return (
    <>
      {pairs.length > 0 && (
        <ol className="known-points">
          {pairs.map(({ at }, i) => (
            <li key={i}>
              <span>
                {at === null
                  ? 'where is it?'
                  : rmsM === null
                    ? 'known'
                    : `misses by ${missWords(missesM[i] ?? 0, units)}`}
              </span>
              <button
                type="button"
                className="link-button"
                aria-label={`Take out point ${String(i + 1)}`}
                onClick={() => hand.takeOut(i)}
              >
                Take out
              </button>
            </li>
          ))}
        </ol>
      )}
      {waiting && onEarth && <PositionFields hand={hand} />}
      {subject?.kind === 'picture' && known >= 3 && (
        <label className="choice">
          <input
            type="checkbox"
            checked={keepShape}
            onChange={({ target }) => hand.keepShape(target.checked)}
          />
          Keep its shape
        </label>
      )}
      {rmsM !== null && known > 1 && (
        <p className="held-facts">
          The points agree within <strong>{missWords(rmsM, units)}</strong> (root mean square of the misses).
        </p>
      )}
      {rmsM === null && known > 1 && state.trouble === null && (
        <p className="held-facts">
          {known === 2 ? 'Two' : 'Three'} points settle it and leave nothing to check by. One more shows how
          well they agree.
        </p>
      )}
    </>
  );
}

/** Where the waiting point lies on the earth, for who knows it by its coordinates. */
function PositionFields({ hand }: { readonly hand: PlacingHand }): React.JSX.Element {
  const [lat, setLat] = useState('');
  const [lon, setLon] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const put = (): void => {
    try {
      hand.putPosition(positionTyped(lat, lon));
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  return (
    <>
      <TypedField label="Latitude" value={lat} change={setLat} enter={put} trouble={trouble} />
      <TypedField label="Longitude" value={lon} change={setLon} enter={put} trouble={null} />
    </>
  );
}

function KnownDistance({ hand, state, units }: PartProps): React.JSX.Element | null {
  const { span, affine, focus } = state;
  const [typed, setTyped] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (focus.on === 'length') field.current?.focus();
  }, [focus]);
  const [from, to] = span.map((on) => onPlane(affine, on));
  if (from === undefined || to === undefined) return null;
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const nowM = distanceM(from, to);
  const put = (): void => {
    try {
      hand.lengthTo(typed);
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  return (
    <>
      <TypedField
        label="Distance"
        unit={unit}
        value={typed}
        change={setTyped}
        enter={put}
        trouble={trouble}
        inputRef={field}
      />
      <p className="held-facts">
        As it lies now: {decimals(units.system === 'yards' ? yardsFromMetres(nowM) : nowM, 2)} {unit}.
      </p>
    </>
  );
}

/** What to do next, by pointer and by keys. */
function Hints({
  state,
  units,
}: {
  readonly state: PlacingState;
  readonly units: UnitsPreference;
}): React.JSX.Element {
  const { subject, way, pairs, span } = state;
  const key = (name: string): React.JSX.Element => <kbd>{name}</kbd>;
  const [fine, far] =
    units.system === 'yards' ? ['four inches', 'a yard'] : ['a tenth of a metre', 'a metre'];
  if (way === 'move')
    return (
      <p className="hint">
        Drag it{subject?.kind === 'source' ? '' : ', or turn it by its round handle'}. Arrow keys move it{' '}
        {fine}, with {key('Shift')} {far}
        {subject?.kind === 'source' ? (
          ''
        ) : (
          <>
            ; {key('[')} and {key(']')} turn it half a degree
          </>
        )}
        . {key('Enter')} keeps it.
      </p>
    );
  const walk = (
    <>
      {' '}
      With keys: arrows walk, {key('Enter')} puts, {key('Backspace')} takes back.
    </>
  );
  if (way === 'distance')
    return (
      <p className="hint">
        {span.length === 0
          ? 'Click one end of something in the picture whose length you know.'
          : span.length === 1
            ? 'Click its other end.'
            : 'Type how long it is on the ground. It may be done again.'}
        {walk}
      </p>
    );
  const onIt = subject?.kind === 'picture' ? 'in the picture' : 'of the drawing';
  return (
    <p className="hint">
      {pairs.at(-1)?.at === null
        ? 'Now click where that point lies.'
        : `Click a point ${onIt} whose place you know, then where it lies.`}
      {walk}
    </p>
  );
}
