import { Flag, Printer } from 'lucide-react';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { byLabel } from '../../shared/atlas/byLabel.ts';
import { headerOf, recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, HoleRecord } from '../../shared/atlas/records.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { PlaybookFont, SheetSize } from '../../shared/playbook/playbookCss.ts';
import type { PlaybookLayout } from '../../shared/playbook/playbookHtml.ts';
import { percent, strokes } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { BookPlanning } from '../store/bookPlanning.ts';
import { ballsShown, groupNames } from '../store/ballGroups.ts';
import { troubleOf } from '../store/notices.ts';
import { useSettled } from '../store/useSettled.ts';
import { sessionStore } from '../store/session.ts';
import { focusInstead } from '../ui/giveFocusBack.ts';
import { GroupSelect } from '../ui/GroupSelect.tsx';
import { ToSurvey } from '../ui/ToSurvey.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { holeWords } from '../ui/words.ts';
import './playbook.css';

interface PlaybookWorkspaceProps {
  readonly document: AtlasDocument;
  readonly holes: readonly HoleRecord[];
  readonly holeId: string;
  readonly units: UnitsPreference;
  readonly book: BookPlanning;
  readonly fonts: () => Promise<readonly PlaybookFont[]>;
  readonly chooseHole: (id: string) => void;
  readonly print: (html: string, suggestedName: string) => void;
}

const partNames = {
  cards: 'Cards, 4¼ × 7 in',
  guide: 'Guide on full sheets',
  both: 'Guide and cards',
} as const;
const sheetNames: Readonly<Record<SheetSize, string>> = { a4: 'A4', letter: 'Letter' };

/** The pages of a hole as they will be printed, and what the person chose for them. */
export function PlaybookWorkspace(props: PlaybookWorkspaceProps): React.JSX.Element {
  const { document, holes, holeId, units, book } = props;
  const { scene: wholeScene, sceneTrouble } = useSettled();
  const { ballGroup } = useStore(sessionStore);
  // Only the balls of the group that is shown go on the pages; the plans themselves are the same.
  const scene = useMemo(
    () => (wholeScene === null || wholeScene.flags.length === 0 ? null : withGroup(wholeScene, ballGroup)),
    [wholeScene, ballGroup],
  );
  const [parts, setParts] = useState<PlaybookLayout['parts']>('cards');
  const [sheet, setSheet] = useState<SheetSize>('a4');
  const { plans, share } = useBookPlans(book, document, scene);
  const pages = usePages(book, document, scene, plans, units, parts, sheet, props.fonts);
  const html = share === null && pages.share === null ? pages.html : null;
  const name = headerOf(document).name;
  const hole = holes.find(({ id }) => id === holeId);
  const choices = scene === null || plans === null ? [] : choiceWords(document, scene, plans);

  return (
    <div className="playbook">
      <h1 className="unseen">Playbook of {holeWords(hole?.label ?? '', hole?.name ?? '')}</h1>
      <nav className="playbook-holes" aria-label="Holes">
        <h2>Holes</h2>
        {holes.map(({ id, label, name: holeName }) => (
          <button
            key={id}
            type="button"
            aria-current={id === holeId ? 'true' : undefined}
            onClick={() => props.chooseHole(id)}
          >
            {holeWords(label, holeName)}
          </button>
        ))}
      </nav>
      <section className="playbook-pages" aria-label="Pages">
        {sceneTrouble !== null && (
          <>
            <Trouble trouble={sceneTrouble} />
            <ToSurvey go={() => sessionStore.setState({ workspace: 'survey' })} />
          </>
        )}
        {wholeScene?.flags.length === 0 && (
          <div className="playbook-wait">
            <p>There is a card for every flag, and no flag stands on this green yet.</p>
            <button
              type="button"
              className="button to-survey"
              onClick={() => {
                sessionStore.setState({ workspace: 'positions' });
                focusInstead('.positions-side .button-flag');
              }}
            >
              <Flag size={18} strokeWidth={1.9} aria-hidden /> Stand a flag
            </button>
          </div>
        )}
        {share !== null && (
          <p className="playbook-wait" role="status">
            Planning every ball to every flag, {percent(100 * share)}
          </p>
        )}
        {share === null && pages.share !== null && (
          <p className="playbook-wait" role="status">
            Laying out the pages, {percent(100 * pages.share)}
          </p>
        )}
        {share === null && pages.trouble !== null && <Trouble trouble={pages.trouble} />}
        {html !== null && (
          <iframe
            title={`Pages of ${holeWords(hole?.label ?? '', hole?.name ?? '')}`}
            sandbox=""
            srcDoc={html}
          />
        )}
      </section>
      <aside className="playbook-side" aria-label="Pages and choices">
        <h2>Pages</h2>
        <GroupSelect
          names={groupNames(wholeScene?.balls.map(({ record }) => record) ?? [])}
          chosen={ballGroup}
          choose={(name) => sessionStore.setState({ ballGroup: name })}
        />
        <label>
          <span>What</span>
          <select value={parts} onChange={(event) => setParts(partOf(event.target.value))}>
            {Object.entries(partNames).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {parts !== 'cards' && (
          <label>
            <span>Sheet of the guide</span>
            <select
              value={sheet}
              onChange={(event) => setSheet(event.target.value === 'letter' ? 'letter' : 'a4')}
            >
              {Object.entries(sheetNames).map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
        )}
        <button
          type="button"
          className="button filled"
          disabled={html === null}
          onClick={() => html !== null && props.print(html, `${name} ${hole?.label ?? ''} playbook`.trim())}
        >
          <Printer size={18} strokeWidth={1.9} aria-hidden /> Print or save as PDF
        </button>
        <p className="playbook-note">Print at 100 %, “actual size”: the scale of the maps depends on it.</p>
        <h2>
          {scene === null || recordsOf(document, 'player').length < 2
            ? 'Your choices'
            : `Choices of ${scene.player.name}`}
        </h2>
        {plans === null ? (
          <p className="playbook-note">Listed here once the pages are laid out.</p>
        ) : choices.length === 0 ? (
          <p className="playbook-note">
            {ballGroup === null ? 'None on this hole' : `None from the balls of ${ballGroup}`}: the pages
            carry the advice. Put another shot in from Plan.
          </p>
        ) : (
          <ul>
            {choices.map(({ key, words }) => (
              <li key={key}>{words}</li>
            ))}
          </ul>
        )}
      </aside>
    </div>
  );
}

const partOf = (value: string): PlaybookLayout['parts'] =>
  value === 'guide' || value === 'both' ? value : 'cards';

/** A scene with the balls of a group alone. */
function withGroup(scene: Scene, group: string | null): Scene {
  const shown = new Set(
    ballsShown(
      scene.balls.map(({ record }) => record),
      group,
    ),
  );
  return { ...scene, balls: scene.balls.filter(({ record }) => shown.has(record)) };
}

function useBookPlans(
  book: BookPlanning,
  document: AtlasDocument,
  scene: Scene | null,
): { readonly plans: readonly Plan[] | null; readonly share: number | null } {
  const [made, setMade] = useState<{
    readonly scene: Scene;
    readonly plans: readonly Plan[] | null;
    readonly share: number;
  } | null>(null);
  useEffect(() => {
    if (scene === null) return undefined;
    book.plan(document, scene, {
      progress: (share) => setMade({ scene, plans: null, share }),
      done: (plans) => setMade({ scene, plans, share: 1 }),
    });
    return () => book.cancel();
  }, [book, document, scene]);
  if (scene === null) return { plans: null, share: null };
  if (made?.scene !== scene) return { plans: null, share: 0 };
  return { plans: made.plans, share: made.plans === null ? made.share : null };
}

interface PagesNow {
  /** The plans they are of. */
  readonly plans: readonly Plan[] | null;
  readonly html: string | null;
  /** Share that is laid out; null when there is nothing to lay out. */
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
}
const noPages: PagesNow = { plans: null, html: null, share: null, trouble: null };

function usePages(
  book: BookPlanning,
  document: AtlasDocument,
  scene: Scene | null,
  plans: readonly Plan[] | null,
  units: UnitsPreference,
  parts: PlaybookLayout['parts'],
  sheet: SheetSize,
  fonts: () => Promise<readonly PlaybookFont[]>,
): PagesNow {
  const [made, setMade] = useState<PagesNow>(noPages);
  useEffect(() => {
    if (scene === null || plans === null) return undefined;
    let wanted = true;
    const put = (change: Partial<PagesNow>): void => {
      if (wanted) setMade({ ...noPages, plans, ...change });
    };
    const ask = (letters: readonly PlaybookFont[]): void => {
      if (!wanted) return;
      put({ share: 0 });
      const layout = { fonts: letters, sheet, parts };
      const ballIds = scene.balls.map(({ record }) => record.id);
      book.pages(
        { document, holeId: scene.hole.id, plans, ballIds, holds: book.holds(scene), units, layout },
        {
          progress: (share) => put({ share }),
          answer: (html) => put({ html }),
          problem: (trouble) => put({ trouble }),
        },
      );
    };
    void fonts()
      .then(ask)
      .catch((error: unknown) => put({ trouble: troubleOf(error) }));
    return () => {
      wanted = false;
    };
  }, [book, document, scene, plans, units, parts, sheet, fonts]);
  if (plans === null) return noPages;
  // Until the first word of it comes, of these plans nothing is laid out yet.
  return made.plans === plans ? made : { ...noPages, plans, share: 0 };
}

/** "Ball 3 to flag B: Chip 46° (advice: Putt, 0.12 strokes fewer)", by the numbers of the balls. */
function choiceWords(
  document: AtlasDocument,
  scene: Scene,
  plans: readonly Plan[],
): readonly { readonly key: string; readonly words: string }[] {
  const own = recordsOf(document, 'choice').filter(({ playerId }) => playerId === scene.player.id);
  const listed = own.flatMap(({ id, ballId, flagId, optionId, note }) => {
    const ball = scene.balls.find(({ record }) => record.id === ballId);
    const flag = scene.flags.find(({ record }) => record.id === flagId);
    const plan = plans.find((one) => one.ballId === ballId && one.flagId === flagId);
    const picked = plan?.options.find((option) => option.id === optionId);
    const advised = plan?.options.find((option) => option.id === plan.chosenId);
    if (ball === undefined || flag === undefined || advised === undefined) return [];
    const shot =
      picked === undefined
        ? `your shot is no option any more, so the pages carry the advice, ${optionName(advised)}`
        : `${optionName(picked)}${adviceWords(picked, advised)}`;
    const words = `Ball ${ball.record.label} to flag ${flag.record.label}: ${shot}${note === '' ? '' : `. ${note}`}`;
    return [{ key: id, words, ball: ball.record, flag: flag.record }];
  });
  return listed.toSorted((a, b) => byLabel(a.ball, b.ball) || byLabel(a.flag, b.flag));
}

function adviceWords(picked: PlanOption, advised: PlanOption): string {
  if (picked === advised) return '';
  const saved = picked.strokes - advised.strokes;
  const difference =
    Math.abs(saved) < 0.005 ? 'level' : `${strokes(Math.abs(saved))} strokes ${saved > 0 ? 'fewer' : 'more'}`;
  return ` (advice: ${optionName(advised)}, ${difference})`;
}
