import { useEffect, useRef } from 'react';
import { kindWords } from '../../shared/words/coverWords.ts';
import { lineWords } from '../../shared/atlas/shaping.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { TypedField } from './Field.tsx';
import type { Hand } from './hand.ts';
import { HandHints } from './HandHints.tsx';
import { type HandState, runsAlong } from './handState.ts';
import { article } from './making.ts';
import { type ToolId, toolOf } from './tools.ts';
import { heightUnit } from './words.ts';

interface HandPanelProps {
  readonly hand: Hand;
  readonly state: HandState;
  readonly units: UnitsPreference;
  /** What was drawn last is still held and told above: these fields are of what comes after it. */
  readonly next: boolean;
}

interface Asked {
  readonly field: string;
  readonly label: string;
  readonly unit?: string;
}

/** What is being drawn, with fields for what to call it and for exact sides and heights. */
export function HandPanel({ hand, state, units, next }: HandPanelProps): React.JSX.Element {
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
      <h2>{next ? `Next ${toolOf(tool).name.toLowerCase()}` : titleOf(state)}</h2>
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
      <HandHints state={state} units={units} />
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
