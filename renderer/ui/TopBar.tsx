import { ALargeSmall, ChevronDown, Moon, Redo2, SlidersHorizontal, Sun, Undo2 } from 'lucide-react';
import { BrandMark } from './BrandMark.tsx';
import { Menu, type MenuGroup } from './Menu.tsx';

export interface Tab {
  readonly id: string;
  readonly label: string;
}

interface TopBarProps {
  readonly atlasName: string;
  readonly holeWords: string;
  readonly atlasMenu: readonly MenuGroup[];
  readonly tabs: readonly Tab[];
  readonly tab: string;
  readonly openTab: (id: string) => void;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly dark: boolean;
  readonly toggleDark: () => void;
  readonly large: boolean;
  readonly toggleLarge: () => void;
  readonly settings: readonly MenuGroup[];
}

/** Which atlas and hole, which workspace, undo and redo, how it looks. */
export function TopBar(props: TopBarProps): React.JSX.Element {
  const { atlasName, holeWords, tabs, tab, undoLabel, redoLabel, dark, large } = props;
  const undoName = undoLabel === null ? 'Nothing to undo' : `Undo: ${undoLabel}`;
  const redoName = redoLabel === null ? 'Nothing to redo' : `Redo: ${redoLabel}`;
  const walk = (event: React.KeyboardEvent): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    const at = tabs.findIndex(({ id }) => id === tab);
    const next = tabs[(at + step + tabs.length) % tabs.length];
    if (step === 0 || next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    props.openTab(next.id);
    event.currentTarget.querySelector<HTMLElement>(`[data-tab="${next.id}"]`)?.focus();
  };
  return (
    <header className="top-bar">
      <div className="top-left">
        <span className="brand">
          <BrandMark />
          <span className="brand-word">Swale</span>
        </span>
        <Menu
          className="place-button"
          groups={props.atlasMenu}
          button={
            <>
              <span className="place-words">
                <span className="atlas-words">
                  <strong>{atlasName}</strong>
                </span>
                {holeWords !== '' && <span className="atlas-end"> · </span>}
                <span className="hole-words">{holeWords}</span>
              </span>
              <ChevronDown size={16} strokeWidth={1.9} aria-hidden />
            </>
          }
        />
      </div>
      <div className="tabs" role="tablist" aria-label="Workspaces" onKeyDown={walk}>
        {tabs.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            role="tab"
            id={`tab-${id}`}
            data-tab={id}
            aria-selected={id === tab}
            aria-controls="workspace"
            tabIndex={id === tab ? 0 : -1}
            onClick={() => props.openTab(id)}
          >
            {label}
          </button>
        ))}
      </div>
      <div className="top-right">
        <button
          type="button"
          className="icon-button"
          aria-label={undoName}
          title={undoName}
          disabled={undoLabel === null}
          onClick={props.undo}
        >
          <Undo2 size={19} strokeWidth={1.9} aria-hidden />
        </button>
        <button
          type="button"
          className="icon-button"
          aria-label={redoName}
          title={redoName}
          disabled={redoLabel === null}
          onClick={props.redo}
        >
          <Redo2 size={19} strokeWidth={1.9} aria-hidden />
        </button>
        <span className="divider" />
        <button
          type="button"
          className="icon-button"
          aria-label="Large type"
          aria-pressed={large}
          title="Large type"
          onClick={props.toggleLarge}
        >
          <ALargeSmall size={21} strokeWidth={1.9} aria-hidden />
        </button>
        <button
          type="button"
          className="icon-button"
          aria-label={dark ? 'Light theme' : 'Dark theme'}
          title={dark ? 'Light theme' : 'Dark theme'}
          onClick={props.toggleDark}
        >
          {dark ? (
            <Moon size={19} strokeWidth={1.9} aria-hidden />
          ) : (
            <Sun size={19} strokeWidth={1.9} aria-hidden />
          )}
        </button>
        <Menu
          className="icon-button"
          name="Settings"
          align="end"
          groups={props.settings}
          button={<SlidersHorizontal size={19} strokeWidth={1.9} aria-hidden />}
        />
      </div>
    </header>
  );
}
