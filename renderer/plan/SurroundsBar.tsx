import { hatchLines, surroundsClasses, type SurroundsLayer } from '../../shared/plate/surroundsLayer.ts';

export type SurroundsChoice = 'off' | SurroundsLayer['by'];

interface SurroundsBarProps {
  readonly choice: SurroundsChoice;
  readonly layer: SurroundsLayer | null;
  readonly share: number | null;
  readonly flagLabel: string;
  readonly choose: (choice: SurroundsChoice) => void;
}

const names: Readonly<Record<SurroundsChoice, string>> = {
  off: 'slopes',
  strokes: 'strokes from anywhere',
  simple: 'simplest shot from anywhere',
};

/** What the plate shows of the ground: its slopes, or what it costs to play from each place. */
export function SurroundsSelect({
  choice,
  choose,
}: Pick<SurroundsBarProps, 'choice' | 'choose'>): React.JSX.Element {
  return (
    <label className="surrounds-choice">
      <span>Ground shows</span>
      <select
        value={choice}
        onChange={({ target }) =>
          choose(target.value === 'strokes' || target.value === 'simple' ? target.value : 'off')
        }
      >
        {(['off', 'strokes', 'simple'] as const).map((one) => (
          <option key={one} value={one}>
            {names[one]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The key of the map of the surrounds, or how far it is. */
export function SurroundsBar(props: SurroundsBarProps): React.JSX.Element | null {
  const { choice, layer, share, flagLabel, choose } = props;
  if (layer === null && share === null) return null;
  return (
    <div className="surrounds-bar">
      {share !== null && (
        <span role="status">
          Every place to flag {flagLabel}, {Math.round(share * 100)} %{' '}
          <button type="button" className="link-button" onClick={() => choose('off')}>
            Cancel
          </button>
        </span>
      )}
      {layer !== null && (
        <ul className="surrounds-legend" aria-label={`Key: ${names[choice]}, flag ${flagLabel}`}>
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
