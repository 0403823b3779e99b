import { Drawing } from '../ui/drawing.tsx';
import { keyWords, type Tool, type ToolId, tools } from './tools.ts';
import { swatch } from './swatches.ts';

const swatches = new Map(tools.map(({ id }) => [id, swatch(id)]));

const groups: readonly { readonly group: Tool['group']; readonly title: string }[] = [
  { group: 'area', title: 'Areas' },
  { group: 'line', title: 'Lines' },
  { group: 'point', title: 'Points' },
  { group: 'hand', title: 'Hand' },
];

interface ToolListProps {
  readonly tool: ToolId;
  readonly readOnly: boolean;
  readonly choose: (tool: ToolId) => void;
}

/** The tools, which are the legend: what each draws, its name and its key. */
export function ToolList({ tool, readOnly, choose }: ToolListProps): React.JSX.Element {
  return (
    <nav className="tools" aria-label="Tools">
      {groups
        .filter(({ group }) => !readOnly || group === 'hand')
        .map(({ group, title }) => (
          <section key={group} aria-label={title}>
            <h2>{title}</h2>
            <ul>
              {tools
                .filter((one) => one.group === group)
                .map(({ id, name, key }) => (
                  <li key={id}>
                    <button
                      type="button"
                      className="tool"
                      aria-pressed={id === tool}
                      aria-label={name}
                      aria-keyshortcuts={/^[A-Z]$/.test(key) ? `Shift+${key}` : key.toUpperCase()}
                      onClick={() => choose(id)}
                    >
                      <Drawing node={swatches.get(id) ?? null} className="tool-swatch" />
                      <span className="tool-name" aria-hidden>
                        {name}
                      </span>
                      <kbd aria-hidden>{keyWords(key)}</kbd>
                    </button>
                  </li>
                ))}
            </ul>
          </section>
        ))}
    </nav>
  );
}
