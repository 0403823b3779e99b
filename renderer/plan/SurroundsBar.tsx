import { memo, useMemo } from 'react';
import type { SurroundsMap } from '../../shared/planner/surroundsMap.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import { surroundsClasses, type SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';
import { surroundsSwatch } from '../../shared/plate/surroundsKey.ts';
import { distance, percent, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { MapControls } from '../map/PlateMap.tsx';
import { focusInstead } from '../ui/giveFocusBack.ts';
import { Drawing } from '../ui/drawing.tsx';
import { surroundsOff, type SurroundsChoice } from './surroundsChoice.ts';
import { type ReadBall, SurroundsReading } from './SurroundsReading.tsx';
import './surrounds.css';

interface SurroundsBarProps {
  readonly choice: SurroundsChoice;
  readonly layer: SurroundsLayer | null;
  readonly share: number | null;
  /** "flag B" or "every flag". */
  readonly flagWords: string;
  readonly units: UnitsPreference;
  /** The chosen ball, whose place is told while the pointer is elsewhere. */
  readonly ball: ReadBall | null;
  readonly flagLabels: ReadonlyMap<string, string>;
  readonly controls: Pick<MapControls, 'watchPointer'> | null;
  readonly stop: () => void;
}

const names: Readonly<Record<SurroundsChoice['by'], string>> = {
  off: 'slopes',
  strokes: 'strokes to hole out',
  simple: 'simplest shot',
};

const keyOf = ({ by, over }: SurroundsChoice): string => `${by} ${over}`;

interface SurroundsSelectProps {
  readonly choice: SurroundsChoice;
  readonly flagLabel: string;
  /** Whether there is more than one flag. */
  readonly several: boolean;
  readonly choose: (choice: SurroundsChoice) => void;
}

/** What the plate shows of the ground: its slopes, or what it costs to play from each place. */
export function SurroundsSelect(props: SurroundsSelectProps): React.JSX.Element {
  const { choice, flagLabel, several, choose } = props;
  const scopes = several ? (['flag', 'every'] as const) : (['flag'] as const);
  const all: readonly SurroundsChoice[] = scopes.flatMap((over) =>
    (['strokes', 'simple'] as const).map((by) => ({ by, over })),
  );
  return (
    <label className="surrounds-choice">
      <span>
        Ground<span className="roomy-words"> shows</span>
      </span>
      <select
        value={keyOf(choice)}
        onChange={({ target }) => choose(all.find((one) => keyOf(one) === target.value) ?? surroundsOff)}
      >
        <option value={keyOf(surroundsOff)}>{names.off}</option>
        {scopes.map((over) => (
          <optgroup key={over} label={over === 'every' ? 'Over every flag' : `To flag ${flagLabel}`}>
            {all
              .filter((one) => one.over === over)
              .map((one) => (
                <option key={keyOf(one)} value={keyOf(one)}>
                  {names[one.by]}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
    </label>
  );
}

/** "Strokes to hole out": what is shown, at the head of a key. */
export const surroundsName = ({ by }: SurroundsChoice): string =>
  names[by].charAt(0).toUpperCase() + names[by].slice(1);

/** What the key is of: "To flag B, 33 yd each way". */
export function surroundsTitle(
  { over, by }: SurroundsChoice,
  { columns, cellM }: SurroundsMap,
  flagWords: string,
  units: UnitsPreference,
): string {
  if (over === 'flag') return `To ${flagWords}, ${withUnit(distance((columns * cellM) / 2, units))} each way`;
  return by === 'strokes' ? 'Mean over every flag' : 'Over every flag';
}

/** The key of the map of the surrounds and what it says of one place, or how far it is. */
export const SurroundsBar = memo(function SurroundsBar(props: SurroundsBarProps): React.JSX.Element | null {
  const { choice, layer, share, flagWords, units, stop } = props;
  const classes = useMemo(() => {
    if (layer === null) return [];
    const style = screenStyle('key');
    return surroundsClasses(layer).map((kind) => ({ ...kind, swatch: surroundsSwatch(kind, style) }));
  }, [layer]);
  if (layer === null && share === null) return null;
  return (
    <div className="surrounds-bar">
      {share !== null && (
        <span role="status">
          Every place to {flagWords}, {percent(100 * share)}{' '}
          <button
            type="button"
            className="link-button"
            onClick={() => {
              stop();
              focusInstead('.surrounds-choice select');
            }}
          >
            Cancel
          </button>
        </span>
      )}
      {layer !== null && (
        <>
          <ul className="surrounds-legend" role="list" aria-label={`Key: ${names[choice.by]}, ${flagWords}`}>
            <li>
              <strong>{surroundsTitle(choice, layer.map, flagWords, units)}</strong>
            </li>
            {classes.map(({ words, swatch }) => (
              <li key={words}>
                <Drawing node={swatch} />
                {words}
              </li>
            ))}
          </ul>
          <SurroundsReading
            layer={layer}
            ball={props.ball}
            flagLabels={props.flagLabels}
            controls={props.controls}
          />
        </>
      )}
    </div>
  );
});
