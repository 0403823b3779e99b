import { useMemo } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { spotHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { openDialog } from '../store/dialogs.ts';
import type { PointAsked } from '../store/pointAsked.ts';
import { Dialog } from '../ui/Dialog.tsx';
import {
  emptyDraft,
  emptyRow,
  type LevelDraft,
  levelEdit,
  type LevelRow,
  type LevelWork,
  levelWork,
  placesOf,
  withPlace,
} from './levelWork.ts';
import './bringin.css';

interface LevelBookDialogProps {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly close: () => void;
  /** Asks for places on the map of the survey, with the book closed, from one of the points on. */
  readonly showPlaces: (
    points: readonly PointAsked[],
    index: number,
    done: (shown: readonly PointAsked[]) => void,
  ) => void;
}

/** A book half typed stays until it is put in, whatever happens to its window. */
const draftStore = createStore<LevelDraft>(() => emptyDraft);

const columns: readonly (readonly [keyof LevelRow, string])[] = [
  ['point', 'Point'],
  ['back', 'Back'],
  ['between', 'Between'],
  ['fore', 'Fore'],
  ['east', 'East'],
  ['north', 'North'],
];

/** Readings on a staff, row by row, reduced as they are typed: how the round closes, and the heights it gives. */
export function LevelBookDialog(props: LevelBookDialogProps): React.JSX.Element {
  const { document, holeId, units, readOnly, edit, close, showPlaces } = props;
  const draft = useStore(draftStore);
  const { rows, staff, firstHeight, lastHeight } = draft;
  const work = useMemo(() => reduced(document, holeId, draft, units), [document, holeId, draft, units]);
  const set = (change: Partial<LevelDraft>): void => draftStore.setState(change);
  const type = (at: number, column: keyof LevelRow, text: string): void => {
    const changed = rows.map((row, i) => (i === at ? { ...row, [column]: text } : row));
    set({ rows: at === rows.length - 1 && text !== '' ? [...changed, emptyRow] : changed });
  };
  const askPlaces = (from: number): void => {
    const rowsNow = rows.filter(isBegun);
    const at = placesTyped(document, holeId, rowsNow, units);
    const points = rowsNow.map((row, i): PointAsked => {
      const label = String(rows.indexOf(row) + 1);
      const name = row.point.trim() === '' ? `row ${label}` : row.point.trim();
      return { label, name, at: at[i] ?? null };
    });
    const back = (shown: readonly PointAsked[]): void => {
      draftStore.setState(({ rows: now }) => ({
        rows: now.map((row, i) => {
          const place = shown.find(({ label }) => label === String(i + 1))?.at ?? null;
          const before = points.find(({ label }) => label === String(i + 1))?.at ?? null;
          return place === null || place === before ? row : withPlace(document, holeId, row, place, units);
        }),
      }));
      openDialog('levelBook');
    };
    showPlaces(points, rowsNow.indexOf(rows[from] ?? emptyRow), back);
  };
  const flat = units.system === 'yards' ? 'yards' : 'metres';
  const high = units.system === 'yards' ? 'ft' : 'm';
  const placed = work.done?.placed.length ?? 0;
  return (
    <Dialog title="Level book" close={close} wide>
      <form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (work.done === null || placed === 0) return;
          edit(levelEdit(document, work.done, () => crypto.randomUUID()));
          draftStore.setState(emptyDraft, true);
          close();
        }}
      >
        <p>
          Begin with a back sight on the benchmark. Change points have a fore and a back sight on one row. End
          on the benchmark, so that a slip shows.
        </p>
        <div className="bringin-fields">
          <label>
            <span>The staff is marked in</span>
            <select
              value={staff}
              onChange={({ target }) => set({ staff: target.value === 'ft' ? 'ft' : 'm' })}
            >
              <option value="m">metres</option>
              <option value="ft">feet</option>
            </select>
          </label>
          <label>
            <span>Height of the first point, {high}</span>
            <input
              type="text"
              value={firstHeight}
              placeholder="0"
              onChange={({ target }) => set({ firstHeight: target.value })}
            />
          </label>
          <label>
            <span>Height of the last point, {high}, if it is another and known</span>
            <input
              type="text"
              value={lastHeight}
              onChange={({ target }) => set({ lastHeight: target.value })}
            />
          </label>
        </div>
        <div className="level-book">
          <table>
            <caption>
              East and north are in {flat} from the middle of the green; a point with the name of a landmark
              lies there
            </caption>
            <thead>
              <tr>
                <th scope="col">
                  <span className="unseen">Row</span>
                </th>
                {columns.map(([column, words]) => (
                  <th key={column} scope="col">
                    {words}
                  </th>
                ))}
                <th scope="col">
                  <span className="unseen">Place</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row, at) => (
                <tr key={at}>
                  <th scope="row">{at + 1}</th>
                  {columns.map(([column, words]) => (
                    <td key={column}>
                      <input
                        type="text"
                        autoComplete="off"
                        inputMode={column === 'point' ? 'text' : 'decimal'}
                        aria-label={`Row ${String(at + 1)}, ${words.toLowerCase()}`}
                        value={row[column]}
                        onChange={({ target }) => type(at, column, target.value)}
                      />
                    </td>
                  ))}
                  <td>
                    {isBegun(row) && (
                      <button
                        type="button"
                        className="link-button"
                        aria-label={`Row ${String(at + 1)}, show its place on the map`}
                        onClick={() => askPlaces(at)}
                      >
                        On the map
                      </button>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <section aria-label="What it comes to" aria-live="polite">
            {work.done === null ? (
              <p className="hint">{work.why}</p>
            ) : (
              <Reduced work={work.done} units={units} />
            )}
          </section>
        </div>
        <div className="dialog-actions">
          <button type="submit" className="button filled" disabled={readOnly || placed === 0}>
            {placed === 0
              ? 'No height has a place yet'
              : `Put in ${String(placed)} spot ${placed === 1 ? 'height' : 'heights'}`}
          </button>
          <button type="button" className="link-button" onClick={() => draftStore.setState(emptyDraft, true)}>
            Empty the book
          </button>
          <button type="button" className="link-button" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}

function Reduced({
  work: { loop, unplaced },
  units,
}: {
  readonly work: LevelWork;
  readonly units: UnitsPreference;
}): React.JSX.Element {
  const { misclosureM, allowedM, setUps } = loop;
  const mm = (m: number): string => `${(m * 1000).toFixed(1)} mm`;
  return (
    <>
      <p>
        {misclosureM === null ? (
          'The round does not end on a known height, so nothing shows a slip.'
        ) : (
          <>
            Closes <strong>{mm(Math.abs(misclosureM))}</strong> {misclosureM < 0 ? 'low' : 'high'} over{' '}
            {setUps} {setUps === 1 ? 'set-up' : 'set-ups'}; {mm(allowedM)} would do. It is shared out by
            set-ups.
          </>
        )}
      </p>
      <ul className="level-heights">
        {loop.heights.map(({ point, heightM, rawHeightM }, i) => (
          <li key={i}>
            <span>{point}</span> <strong>{withUnit(spotHeight(heightM, units))}</strong>
            {Math.abs(heightM - rawHeightM) >= 0.00005 && (
              <span className="hint"> moved {mm(heightM - rawHeightM)}</span>
            )}
          </li>
        ))}
      </ul>
      {unplaced.length > 0 && <p className="hint">Without a place, so not put in: {unplaced.join(', ')}.</p>}
    </>
  );
}

/** A row that somebody has begun to fill in. */
const isBegun = ({ point, back, between, fore }: LevelRow): boolean =>
  `${point}${back}${between}${fore}`.trim() !== '';

/** Places as far as they can be read: what is wrong with one is said beside the book. */
function placesTyped(
  document: AtlasDocument,
  holeId: string | null,
  rows: readonly LevelRow[],
  units: UnitsPreference,
): readonly (PlanePoint | null)[] {
  return rows.map((row) => {
    try {
      return placesOf(document, holeId, [row], units)[0] ?? null;
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      return null;
    }
  });
}

function reduced(
  ...asked: Parameters<typeof levelWork>
): { readonly done: LevelWork; readonly why: '' } | { readonly done: null; readonly why: string } {
  try {
    return { done: levelWork(...asked), why: '' };
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    return { done: null, why: error.message };
  }
}
