import { useEffect, useRef } from 'react';
import { kindWords } from '../../shared/words/coverWords.ts';
import { lineWords } from '../../shared/atlas/shaping.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { TypedField } from './Field.tsx';
import type { Hand } from './hand.ts';
import { drawsOutline, type HandState, runsAlong } from './handState.ts';
import { article } from './making.ts';
import { type ToolId, toolOf } from './tools.ts';
import { heightUnit } from './words.ts';

interface HandPanelProps {
  readonly hand: Hand;
  readonly state: HandState;
  readonly units: UnitsPreference;
}

interface Asked {
  readonly field: string;
  readonly label: string;
  readonly unit?: string;
}

/** What is being drawn, with fields for what to call it and for exact sides and heights. */
export function HandPanel({ hand, state, units }: HandPanelProps): React.JSX.Element {
  const { sketch, waiting, typed, trouble, focus, tool } = state;
  const side = useRef<HTMLInputElement>(null);
  const value = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (focus.on === 'side') {
      side.current?.focus();
      side.current?.setSelectionRange(99, 99);
    } else if (focus.on === 'value') value.current?.focus();
  }, [focus]);
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const troubleAt = (field: string, label: string): string | null =>
    trouble !== null && (trouble.field === field || trouble.field === label) ? trouble.message : null;
  const asked = waiting === null ? askedWhileDrawing(tool, units) : [];
  const fields = new Set([...asked.map(({ field, label }) => `${field} ${label}`)]);
  const elsewhere =
    trouble !== null &&
    ![
      ...fields,
      'side This side',
      'bearing Bearing',
      'value Height',
      'value Slope',
      'bearing Falls towards',
    ].some((known) => trouble.field !== '' && known.includes(trouble.field));
  const keep = (): void => hand.keepWaiting();
  return (
    <section className="held" aria-label="Tool in hand">
      <h2>{titleOf(state)}</h2>
      {waiting?.kind === 'spotHeight' && (
        <TypedField
          label="Height"
          unit={heightUnit(units)}
          value={typed['value'] ?? ''}
          change={(text) => hand.type('value', text)}
          enter={keep}
          trouble={troubleAt('value', 'Height')}
          inputRef={value}
        />
      )}
      {waiting?.kind === 'slopeReading' && (
        <>
          <TypedField
            label="Slope"
            unit="%"
            value={typed['value'] ?? ''}
            change={(text) => hand.type('value', text)}
            enter={keep}
            trouble={troubleAt('value', 'Slope')}
            inputRef={value}
          />
          <TypedField
            label="Falls towards"
            unit="°"
            value={typed['bearing'] ?? ''}
            change={(text) => hand.type('bearing', text)}
            enter={keep}
            trouble={troubleAt('bearing', 'Falls towards')}
          />
        </>
      )}
      {asked.map(({ field, label, unit: own }) => (
        <TypedField
          key={field}
          label={label}
          {...(own === undefined ? {} : { unit: own })}
          value={typed[field] ?? ''}
          change={(text) => hand.type(field, text)}
          enter={() => hand.focusPlate()}
          trouble={troubleAt(field, label)}
        />
      ))}
      {sketch !== null && sketch.corners.length > 0 && waiting === null && (
        <>
          <TypedField
            label="This side"
            unit={unit}
            value={typed['side'] ?? ''}
            change={(text) => hand.type('side', text)}
            enter={() => hand.putSide()}
            trouble={troubleAt('side', 'This side')}
            inputRef={side}
          />
          <TypedField
            label="Bearing"
            unit="°"
            value={typed['bearing'] ?? ''}
            change={(text) => hand.type('bearing', text)}
            enter={() => hand.putSide()}
            trouble={troubleAt('bearing', 'Bearing')}
          />
        </>
      )}
      {trouble !== null && elsewhere && (
        <p className="field-trouble" role="alert">
          {trouble.message}
        </p>
      )}
      <Hints state={state} />
      {sketch !== null && sketch.corners.length > 0 && (
        <div className="held-actions">
          <button type="button" className="button" onClick={() => hand.finish()}>
            Finish
          </button>
          {(sketch.along.length > 0 || state.way !== 'shorter') && (
            <button type="button" className="link-button" onClick={() => hand.otherWay()}>
              Other way
            </button>
          )}
          <button
            type="button"
            className="link-button"
            onClick={() => hand.key('Escape', { shift: false, onPlate: true })}
          >
            Let go
          </button>
        </div>
      )}
    </section>
  );
}

function titleOf({ tool, purpose, waiting }: HandState): string {
  if (purpose.kind === 'cut') return 'Cutting a piece out';
  if (purpose.kind === 'split') return 'Parting it along a line';
  if (purpose.kind === 'lineOfPlay') return 'Drawing the line of play';
  const { name, group, id } = toolOf(tool);
  if (waiting !== null || group === 'point') return name;
  if (group === 'area') return `Drawing ${article(kindWords[id])}`;
  if (group === 'line') return `Drawing ${article(lineWords[id])}`;
  return name;
}

function askedWhileDrawing(tool: ToolId, units: UnitsPreference): readonly Asked[] {
  const { group, id } = toolOf(tool);
  const height = heightUnit(units);
  if (group === 'area')
    return [
      { field: 'name', label: 'Name' },
      ...(runsAlong(tool)
        ? [
            {
              field: 'width',
              label: 'Width',
              unit: units.system === 'yards' ? 'yd' : 'm',
            },
          ]
        : []),
      ...(id === 'bunker' ? [{ field: 'lip', label: 'Lip height', unit: height }] : []),
      ...(id === 'tree'
        ? [
            { field: 'treeHeight', label: 'Height', unit: height },
            { field: 'canopyBase', label: 'Crown begins', unit: height },
          ]
        : []),
    ];
  if (id === 'contour' || id === 'wall') return [{ field: 'height', label: 'Height', unit: height }];
  return [];
}

/** The keys that matter just now. */
function Hints({ state }: { readonly state: HandState }): React.JSX.Element {
  const { tool, sketch, waiting, way } = state;
  const key = (name: string): React.JSX.Element => <kbd>{name}</kbd>;
  if (waiting !== null)
    return (
      <p className="hint">
        {key('Enter')} keeps it, a click keeps it and begins the next, {key('Esc')} lets go.
      </p>
    );
  if (sketch !== null && sketch.corners.length > 0)
    return (
      <p className="hint">
        {key('Enter')} {drawsOutline(state) ? 'or a click on the first corner closes it' : 'ends it'},{' '}
        {key('Backspace')} takes back a corner, {key('Esc')} lets go. Type a number for an exact side.
        {sketch.along.length > 0 || way !== 'shorter' ? (
          <> {key('X')} goes the other way round, then straight.</>
        ) : null}
      </p>
    );
  if (tool === 'several')
    return (
      <p className="hint">
        Pull a frame round what you want, or click one thing after another. With keys: {key(',')} {key('.')}{' '}
        walk the things, with {key('Shift')} they take the next along.
      </p>
    );
  if (toolOf(tool).group === 'point')
    return (
      <p className="hint">
        Click where it is, or walk there with the arrow keys and press {key('Enter')}.
        {tool === 'slopeReading' && ' Pull from there the way it falls to set the bearing as well.'}
      </p>
    );
  if (runsAlong(tool))
    return (
      <p className="hint">
        Click round it, or give its width and click along its middle: a path, a ditch or a burn.{' '}
        {key('Enter')} ends it.
      </p>
    );
  if (tool === 'tree')
    return <p className="hint">Drag from the trunk to the edge of the crown, or click for a usual one.</p>;
  return (
    <p className="hint">
      Click round it, or draw it in one stroke with the button or pen down. With keys: arrows walk a foot,
      with {key('Shift')} a yard, {key('Enter')} puts a corner, and closes it where you stand on one.{' '}
      {key('Alt')} held, nothing snaps.
    </p>
  );
}
