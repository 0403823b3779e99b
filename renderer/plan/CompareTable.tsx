import { X } from 'lucide-react';
import { useRef } from 'react';
import { optionName } from '../../shared/planner/optionName.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { signed } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { useGiveFocusBack } from '../ui/giveFocusBack.ts';
import { besideMark } from './besideMark.ts';
import { chanceRows } from './chanceRows.ts';
import { type Figure, figureRows } from './figureRows.ts';
import './compare.css';

interface CompareTableProps {
  /** The first is the one the others are held against. */
  readonly options: readonly PlanOption[];
  /** All that can still be added. */
  readonly more: readonly PlanOption[];
  readonly units: UnitsPreference;
  readonly add: (id: string) => void;
  readonly drop: (id: string) => void;
  readonly close: () => void;
}

const MOST = 3;

/** Two or three options beside each other: what differs, figure by figure. */
export function CompareTable(props: CompareTableProps): React.JSX.Element {
  const panel = useRef<HTMLElement>(null);
  useGiveFocusBack(panel);
  const { options, more, units, add, drop, close } = props;
  const [first] = options;
  const figures = (which: readonly Figure[]): ReturnType<typeof chanceRows> =>
    figureRows(units, which).map(({ words, cell }) => ({ words, cells: options.map(cell) }));
  const rows = [
    ...figures(['swing', 'reach', 'land', 'top', 'aim', 'half', 'most']),
    ...chanceRows(options, units),
    ...figures(['trouble', 'strokes']),
  ];
  return (
    <section className="compare" ref={panel} aria-label="Side by side">
      <div className="compare-head">
        <h2>Side by side</h2>
        {options.length < MOST && more.length > 0 && (
          <label>
            <span className="unseen">Add an option</span>
            <select value="" onChange={({ target }) => target.value !== '' && add(target.value)}>
              <option value="">Add an option</option>
              {more.map((option) => (
                <option key={option.id} value={option.id}>
                  {optionName(option)}
                </option>
              ))}
            </select>
          </label>
        )}
        <button type="button" className="link-button" onClick={close}>
          Done
        </button>
      </div>
      <table>
        <caption className="unseen">
          Figures of the options, the first in red on the plate, the others in grey
        </caption>
        <thead>
          <tr>
            <td />
            {options.map((option, i) => (
              <th key={option.id} scope="col" className={i === 0 ? 'first' : ''}>
                <span className="compare-key" aria-hidden /> {besideMark(i, options.length)}{' '}
                {optionName(option)}
                {i > 0 && (
                  <button
                    type="button"
                    className="icon-button"
                    aria-label={`Take ${optionName(option)} out`}
                    onClick={() => drop(option.id)}
                  >
                    <X size={14} strokeWidth={1.9} aria-hidden />
                  </button>
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ words, cells }) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              {options.map((option, i) => (
                <td key={option.id}>{cells[i]}</td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">Difference</th>
            {options.map((option) => (
              <td key={option.id}>
                {first === undefined || option === first ? '–' : difference(option, first)}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
}

/** Strokes more or fewer; shots that cannot be told from the best are level with each other. */
function difference(option: PlanOption, first: PlanOption): string {
  const asGood = (one: PlanOption): boolean => one.level || one.costStrokes === 0;
  const more = option.strokes - first.strokes;
  return (asGood(option) && asGood(first)) || Math.abs(more) < 0.005 ? 'level' : signed(more, 2);
}
