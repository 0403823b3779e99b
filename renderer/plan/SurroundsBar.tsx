import { hatchLines, surroundsClasses, type SurroundsLayer } from '../../shared/plate/surroundsLayer.ts';
import { distance, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { surroundsOff, type SurroundsChoice } from './surroundsChoice.ts';

interface SurroundsBarProps {
  readonly choice: SurroundsChoice;
  readonly layer: SurroundsLayer | null;
  readonly share: number | null;
  /** "flag B" or "every flag". */
  readonly flagWords: string;
  readonly units: UnitsPreference;
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
      <span>Ground shows</span>
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

/** The key of the map of the surrounds, or how far it is. */
export function SurroundsBar(props: SurroundsBarProps): React.JSX.Element | null {
  const { choice, layer, share, flagWords, units, stop } = props;
  if (layer === null && share === null) return null;
  return (
    <div className="surrounds-bar">
      {share !== null && (
        <span role="status">
          Every place to {flagWords}, {Math.round(share * 100)} %{' '}
          <button type="button" className="link-button" onClick={stop}>
            Cancel
          </button>
        </span>
      )}
      {layer !== null && (
        <ul className="surrounds-legend" aria-label={`Key: ${names[choice.by]}, ${flagWords}`}>
          <li>
            <strong>
              {choice.over === 'flag'
                ? `To ${flagWords}, ${withUnit(distance((layer.map.columns * layer.map.cellM) / 2, units))} each way`
                : choice.by === 'strokes'
                  ? 'Mean over every flag'
                  : 'For most flags'}
            </strong>
          </li>
          {surroundsClasses(layer).map(({ words, hatch }, i) => (
            <li key={words}>
              <svg width="22" height="15" viewBox="0 0 22 15" aria-hidden>
                <rect
                  width="22"
                  height="15"
                  fill={layer.by === 'strokes' && i > 0 ? `var(--slope-${i})` : 'var(--t-green)'}
                  fillOpacity={layer.by === 'strokes' && i > 0 ? `var(--slope-${i}-o)` : 1}
                />
                {hatch.map(({ angleDeg, spacing }) => (
                  <path
                    key={angleDeg}
                    d={hatchLines({ x: 0, y: 0, width: 22, height: 15 }, angleDeg, Math.min(spacing, 7))}
                    stroke="var(--ink-2)"
                    strokeWidth="0.8"
                  />
                ))}
                <rect x="0.5" y="0.5" width="21" height="14" fill="none" stroke="var(--rule-2)" />
              </svg>
              {words}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
