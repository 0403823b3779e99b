import { Bookmark } from 'lucide-react';
import { useState } from 'react';
import type { PlayerRecord } from '../../shared/atlas/records.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { aim, chance, landing, leave, strokeCost, strokes } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { SortKey } from '../store/session.ts';
import { carryAndRun } from './carryAndRun.ts';
import { simplestThree } from './simplestThree.ts';
import { sortedOptions } from './sortedOptions.ts';
import { ShotName } from './ShotName.tsx';
import './ledger.css';

interface LedgerProps {
  readonly plan: Plan;
  readonly units: UnitsPreference;
  /** Whose margin and repertoire say which answers are simple. */
  readonly player: PlayerRecord;
  readonly chosenId: string;
  /** The option put in the playbook, or null. */
  readonly pickedId: string | null;
  readonly sort: SortKey;
  readonly descending: boolean;
  /** Carry and aim are in the facts row where there is no room for them here. */
  readonly narrow: boolean;
  /** Only the simplest three, with shot, landing and strokes. */
  readonly large: boolean;
  readonly coarse: boolean;
  readonly choose: (id: string) => void;
  readonly sortBy: (key: SortKey) => void;
}

interface Column {
  readonly key: SortKey;
  /** Two lines. */
  readonly head: readonly [string, string];
  /** What the heading means, in full. */
  readonly title: string;
  readonly cell: (option: PlanOption) => string;
  readonly narrow: boolean;
  readonly large: boolean;
}

/** Told with the name of the shot: a column of its own would leave too little room for it. */
const swingTitle =
  'The swing: small, medium or long for this player, by the carries measured of the club, else by clubhead speed';

/** Told in a column of its own, where it is the difference from the row that is best. */
const costColumn: Pick<Column, 'key' | 'head' | 'title'> = {
  key: 'cost',
  head: ['Cost', ''],
  title: 'Strokes more than the fewest on this list',
};

const noLanding = '–';
/** Rows shown before someone asks for all of them. */
const MOST_ROWS = 7;

function columnsFor(units: UnitsPreference, coarse: boolean): readonly Column[] {
  const yards = units.system === 'yards';
  const far = yards ? 'yd' : 'm';
  const near = yards ? 'ft' : 'm';
  return [
    {
      key: 'carry',
      head: ['Carry + run', far],
      title: 'How far it flies, and how far it bounces and rolls',
      cell: (option) => carryAndRun(option, units),
      narrow: false,
      large: false,
    },
    {
      key: 'landing',
      head: ['Land', 'paces'],
      title: 'Where to land it, in paces from the near edge of the green',
      cell: ({ landingOnM }) => (landingOnM === null ? noLanding : landing(landingOnM, units).text),
      narrow: true,
      large: true,
    },
    {
      key: 'aim',
      head: ['Aim', near],
      title: 'Where the start line passes the flag',
      cell: ({ aimRightM }) => aim(aimRightM, units).text,
      narrow: false,
      large: false,
    },
    {
      key: 'leave',
      head: ['Leave', near],
      title: 'The usual distance left to the hole: half end nearer',
      cell: (option) => leave(option.leave.medianM, units).text,
      narrow: true,
      large: false,
    },
    {
      key: 'upAndDown',
      head: ['Up and', 'down %'],
      title: 'The chance to hole out in two from here',
      cell: ({ chances }) => chance(chances.upAndDown).text,
      narrow: true,
      large: false,
    },
    {
      key: 'trouble',
      head: ['Trouble', '%'],
      title: 'The chance of sand, water, out of bounds, heavy rough, or of hitting something on the way',
      cell: ({ chances }) => chance(chances.trouble).text,
      narrow: true,
      large: false,
    },
    {
      key: 'strokes',
      head: ['Strokes', ''],
      title: 'Strokes to hole out on average, this one included',
      cell: (option) => (coarse ? option.strokes.toFixed(1) : strokes(option.strokes)),
      narrow: true,
      large: true,
    },
  ];
}

/** Every option, one a row: a radio group of which one is looked at. */
export function Ledger(props: LedgerProps): React.JSX.Element {
  const { plan, units, player, chosenId, pickedId, sort, descending, narrow, large, coarse, choose, sortBy } =
    props;
  const [rowsShown, setRowsShown] = useState<'usual' | 'all' | 'simplest'>('usual');
  const all = rowsShown === 'all';
  const columns = columnsFor(units, coarse).filter((column) =>
    large ? column.large : narrow ? column.narrow : true,
  );
  // Rows keep their order until the numbers are firm.
  const sorted = sortedOptions(plan, coarse ? 'order' : sort, descending);
  const short =
    large || rowsShown === 'simplest'
      ? withLooked(simplestThree(plan, player), chosenId, pickedId)
      : shortList(plan, chosenId, pickedId, MOST_ROWS);
  const rows = all ? sorted : sorted.filter(({ id }) => short.has(id));
  const best = plan.options[0];
  const sortedBy = (key: SortKey): 'ascending' | 'descending' | undefined =>
    sort !== key ? undefined : descending ? 'descending' : 'ascending';
  const mark = (key: SortKey): React.ReactNode =>
    sort === key && (
      <span className="sort-mark" aria-hidden>
        {descending ? ' ▼' : ' ▲'}
      </span>
    );
  return (
    <>
      <table className="ledger">
        <caption className="unseen">Options from this ball to this flag</caption>
        <thead>
          <tr>
            <th scope="col" aria-sort={sort === 'order' ? 'ascending' : sortedBy('size')}>
              <button type="button" onClick={() => sortBy('order')} title="In the order of the advice">
                Shot and club
              </button>{' '}
              <button type="button" className="by-swing" onClick={() => sortBy('size')} title={swingTitle}>
                swing
                {mark('size')}
              </button>
            </th>
            {[...columns, ...(large ? [] : [costColumn])].map(({ key, head: [head, under], title }) => (
              <th key={key} scope="col" aria-sort={sortedBy(key)}>
                <button type="button" onClick={() => sortBy(key)} title={title}>
                  {head}
                  {mark(key)}
                  {under !== '' && (
                    <>
                      <br />
                      {under}
                    </>
                  )}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((option) => (
            <tr
              key={option.id}
              className={option.id === chosenId ? 'chosen' : ''}
              data-option={option.id}
              onClick={() => choose(option.id)}
            >
              <td>
                <label>
                  <input
                    type="radio"
                    name="option"
                    checked={option.id === chosenId}
                    onChange={() => choose(option.id)}
                  />
                  <span>
                    <ShotName name={optionName(option)} /> <span className="shot-swing">{option.size}</span>
                  </span>
                  {option.id === pickedId && (
                    <span className="picked" title="In the playbook">
                      <Bookmark size={15} strokeWidth={1.9} aria-hidden />
                      <span className="unseen">in playbook</span>
                    </span>
                  )}
                </label>
              </td>
              {columns.map(({ key, cell }) => (
                <td key={key} className={key === 'strokes' ? 'strokes' : undefined}>
                  {cell(option)}
                </td>
              ))}
              {!large && (
                <td className="aside">{strokeCost(option.costStrokes, option === best, option.level)}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <div className="ledger-more">
        {(all || rows.length < sorted.length) && (
          <button
            type="button"
            className="link-button"
            aria-expanded={all}
            onClick={() => setRowsShown(all ? 'usual' : 'all')}
          >
            {all ? 'Show fewer' : `Show all ${sorted.length}`}
          </button>
        )}
        {!large && sorted.length > 3 && (
          <button
            type="button"
            className="link-button"
            aria-pressed={rowsShown === 'simplest'}
            title="The advice and the simplest shots within the player’s margin of the best; the nearest where these are too few"
            onClick={() => setRowsShown(rowsShown === 'simplest' ? 'usual' : 'simplest')}
          >
            {rowsShown === 'simplest' ? 'More than the simplest' : 'Simplest three'}
          </button>
        )}
      </div>
    </>
  );
}

/** The advice, what is looked at or picked, the safe way out, then the best of each technique by strokes. */
function shortList(plan: Plan, chosenId: string, pickedId: string | null, most: number): ReadonlySet<string> {
  const list = new Set([plan.chosenId, chosenId]);
  if (pickedId !== null) list.add(pickedId);
  if (plan.safeId !== null) list.add(plan.safeId);
  const seen = new Set<string>();
  for (const { id, technique, playAway, level } of plan.options) {
    if (list.size >= most) break;
    if (playAway || (seen.has(technique) && !level)) continue;
    seen.add(technique);
    list.add(id);
  }
  for (const { id } of plan.options) if (list.size < most) list.add(id);
  return list;
}

/** Short lists hold as well what is looked at and what is picked. */
const withLooked = (
  options: readonly PlanOption[],
  chosenId: string,
  pickedId: string | null,
): ReadonlySet<string> =>
  new Set([...options.map(({ id }) => id), chosenId, ...(pickedId === null ? [] : [pickedId])]);
