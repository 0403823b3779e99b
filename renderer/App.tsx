import { Lock } from 'lucide-react';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import { headerOf, holesInOrder, inUseOf } from '../shared/atlas/document.ts';
import type { Edit } from '../shared/atlas/edits.ts';
import type { UnitsPreference } from '../shared/units/preference.ts';
import { host } from './bridge/host.ts';
import type { ShelfRow } from './library/database.ts';
import type { BookPlanning } from './store/bookPlanning.ts';
import type { Desk } from './store/desk.ts';
import { openDialog } from './store/dialogs.ts';
import { dismissNotice, noticeStore } from './store/notices.ts';
import { redoAnnotation, undoAnnotation } from '../shared/atlas/history.ts';
import { atlasStore, documentOfAtlas } from './store/openAtlas.ts';
import { runMenuCommand } from './store/menuCommand.ts';
import type { Planning } from './store/planning.ts';
import { preferencesStore } from './store/preferences.ts';
import { sessionStore, type Workspace, workspaces } from './store/session.ts';
import { PositionsWorkspace } from './positions/PositionsWorkspace.tsx';
import { takeFiles } from './bringin/takeFiles.ts';
import { useDrop } from './bringin/useDrop.ts';
import { Dialogs } from './Dialogs.tsx';
import { Hand } from './survey/hand.ts';
import { SurveyWorkspace } from './survey/SurveyWorkspace.tsx';
import { playbookFonts } from './playbookFonts.ts';
import { PlayerWorkspace } from './player/PlayerWorkspace.tsx';
import { PlaybookWorkspace } from './playbook/PlaybookWorkspace.tsx';
import { PlanWorkspace } from './plan/PlanWorkspace.tsx';
import { Status } from './Status.tsx';
import { keepFocus } from './ui/keepFocus.ts';
import { showTheme } from './ui/theme.ts';
import { TopBar } from './ui/TopBar.tsx';
import { Trouble } from './ui/Trouble.tsx';
import { useMatch } from './ui/useMatch.ts';
import { holeWords } from './ui/words.ts';
import { atlasMenu, settingsMenu } from './menus.ts';

interface AppProps {
  readonly desk: Desk;
  readonly planning: Planning;
  readonly book: BookPlanning;
}

const tabs: readonly { readonly id: Workspace; readonly label: string }[] = [
  { id: 'survey', label: 'Survey' },
  { id: 'positions', label: 'Positions' },
  { id: 'plan', label: 'Plan' },
  { id: 'playbook', label: 'Playbook' },
  { id: 'player', label: 'Player' },
];

/** The window. */
export function App({ desk, planning, book }: AppProps): React.JSX.Element {
  const { open } = useStore(atlasStore);
  // Which ball and flag are chosen is the workspaces' own: the whole window is not made again for it.
  const session = useStore(
    sessionStore,
    useShallow(({ workspace, holeId }) => ({ workspace, holeId })),
  );
  const preferences = useStore(preferencesStore);
  const notices = useStore(noticeStore);
  const narrow = useMatch('(max-width: 1199px)');
  const darkSystem = useMatch('(prefers-color-scheme: dark)');
  const { theme, textSize } = preferences;
  const dark = theme === 'dark' || (theme === 'auto' && darkSystem);

  const shelf = useShelf(desk, open?.id ?? null);

  useEffect(() => showTheme(theme, textSize), [theme, textSize]);
  useEffect(keepFocus, []);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const typing = event.target instanceof HTMLInputElement && event.target.type === 'text';
      if ((key === 'y' || (key === 'z' && event.shiftKey)) && !typing) desk.redo();
      else if (key === 'z' && !typing) desk.undo();
      else if (key === 's') void (event.shiftKey ? desk.saveAs() : desk.save());
      else if (key === 'o') void desk.openFile();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [desk]);

  useEffect(() => host().onCommand((command) => runMenuCommand(desk, command)), [desk]);

  const document = open === null ? null : documentOfAtlas(open);
  const holes = document === null ? [] : holesInOrder(document);
  const hole = holes.find(({ id }) => id === session.holeId) ?? holes[0];
  const name = document === null ? '' : headerOf(document).name;
  useEffect(() => {
    window.document.title = name === '' ? 'Swale' : `${name} – Swale`;
  }, [name]);
  const player = document === null ? undefined : inUseOf(document, 'player');
  const paceM = player?.paceM ?? 0.9144;
  const units = useUnits(preferences.units, paceM);
  const [hand] = useState(() => new Hand());
  const dropping = useDrop(useCallback((files: readonly File[]) => void takeFiles(desk, files), [desk]));
  const editNow = useCallback((edit: Edit) => desk.edit(edit), [desk]);
  const playersElsewhere = useCallback(() => desk.playersElsewhere(), [desk]);

  return (
    <div className="window">
      <TopBar
        atlasName={name}
        holeWords={hole === undefined ? '' : holeWords(hole.label, hole.name)}
        atlasMenu={atlasMenu(desk, open, holes, hole?.id ?? null, shelf)}
        tabs={tabs}
        tab={session.workspace}
        openTab={(id) => {
          const workspace = workspaces.find((name) => name === id);
          if (workspace !== undefined) sessionStore.setState({ workspace });
        }}
        undoLabel={open === null ? null : undoAnnotation(open.history)}
        redoLabel={open === null ? null : redoAnnotation(open.history)}
        undo={() => desk.undo()}
        redo={() => desk.redo()}
        dark={dark}
        toggleDark={() => preferencesStore.setState({ theme: dark ? 'light' : 'dark' })}
        large={textSize === 'large'}
        toggleLarge={() => preferencesStore.setState({ textSize: textSize === 'large' ? 'usual' : 'large' })}
        settings={settingsMenu(preferences)}
      />
      <div>
        {typeof open?.readOnly === 'string' && (
          <div className="notice-bar">
            <Lock size={16} strokeWidth={1.9} aria-hidden /> {open.readOnly}
          </div>
        )}
        {notices.map((notice) => (
          <Trouble key={notice.id} trouble={notice} dismiss={() => dismissNotice(notice.id)} />
        ))}
      </div>
      <main>
        <div
          className="workspace"
          id="workspace"
          role="tabpanel"
          aria-labelledby={`tab-${session.workspace}`}
        >
          {document !== null && open !== null && session.workspace === 'survey' && (
            <SurveyWorkspace
              key={open.id}
              hand={hand}
              document={document}
              holeId={hole?.id ?? null}
              units={units}
              largeType={textSize === 'large'}
              narrow={narrow}
              readOnly={open.readOnly !== null}
              edit={editNow}
              openSample={() => void desk.openSample()}
              openFile={() => openDialog('bringIn')}
            />
          )}
          {document !== null && hole !== undefined && open !== null && session.workspace === 'positions' && (
            <PositionsWorkspace
              key={hole.id}
              document={document}
              holeId={hole.id}
              units={units}
              largeType={textSize === 'large'}
              readOnly={open.readOnly !== null}
              edit={(edit) => desk.edit(edit)}
              hold={(held) => planning.hold(held)}
            />
          )}
          {document !== null && open !== null && session.workspace === 'player' && (
            <PlayerWorkspace
              key={open.id}
              document={document}
              elsewhere={playersElsewhere}
              units={units}
              readOnly={open.readOnly !== null}
              edit={editNow}
            />
          )}
          {document !== null && hole !== undefined && session.workspace === 'playbook' && (
            <PlaybookWorkspace
              document={document}
              holes={holes}
              holeId={hole.id}
              units={units}
              book={book}
              fonts={playbookFonts}
              chooseHole={(holeId) => sessionStore.setState({ holeId })}
              print={(html, suggestedName) => void desk.print(html, suggestedName)}
            />
          )}
          {document !== null && hole !== undefined && open !== null && session.workspace === 'plan' && (
            <PlanWorkspace
              key={open.id}
              document={document}
              holeId={hole.id}
              units={units}
              largeType={textSize === 'large'}
              narrow={narrow}
              readOnly={open.readOnly !== null}
              edit={(edit) => desk.edit(edit)}
              hold={(held) => planning.hold(held)}
              openFile={() => void desk.openFile()}
              openSample={() => void desk.openSample()}
              planning={planning}
              open={(workspace) => sessionStore.setState({ workspace })}
              fonts={playbookFonts}
            />
          )}
        </div>
      </main>
      <Dialogs
        desk={desk}
        hand={hand}
        atlas={
          open === null || document === null
            ? null
            : { id: open.id, document, holeId: hole?.id ?? null, readOnly: open.readOnly !== null }
        }
        units={units}
        edit={editNow}
      />
      {dropping && <div className="dropping">Let go to bring it in</div>}
      <Status cancel={() => planning.giveUp()} units={units} />
    </div>
  );
}

/** The atlases of the library, read again whenever another one is opened. */
function useShelf(desk: Desk, openId: string | null): readonly ShelfRow[] {
  const [shelf, setShelf] = useState<readonly ShelfRow[]>([]);
  useEffect(() => {
    desk.atlases().then(setShelf, () => setShelf([]));
  }, [desk, openId]);
  return shelf;
}

/** The same object while nothing in it changes: drawings are kept by it. */
function useUnits(system: UnitsPreference['system'], paceM: number): UnitsPreference {
  return useMemo(() => ({ system, paceM }), [system, paceM]);
}
