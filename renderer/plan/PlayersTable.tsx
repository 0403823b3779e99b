import { ChevronDown, X } from 'lucide-react';
import { useRef } from 'react';
import type { PlayerAdvice } from '../../shared/planner/playersAdvice.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import { percent } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { useGiveFocusBack } from '../ui/giveFocusBack.ts';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { besideMark } from './besideMark.ts';
import { figureRows } from './figureRows.ts';
import { ShotName } from './ShotName.tsx';
import { LEAST_PLAYERS, MOST_PLAYERS, type PlayerChoice } from './playerChoices.ts';
import './compare.css';

interface PlayersTableProps {
  /** Whose advice is shown, by key; the first is drawn in red. */
  readonly keys: readonly string[];
  readonly choices: readonly PlayerChoice[];
  /** In the order of the keys; null while it is worked out. */
  readonly advice: readonly PlayerAdvice[] | null;
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
  readonly units: UnitsPreference;
  readonly setKeys: (keys: readonly string[]) => void;
  readonly close: () => void;
}

/** What two to four players should each play from here, beside each other. */
export function PlayersTable(props: PlayersTableProps): React.JSX.Element {
  const panel = useRef<HTMLElement>(null);
  useGiveFocusBack(panel);
  const { keys, choices, advice, share, trouble, units, setKeys, close } = props;
  const of = (key: string): PlayerAdvice | undefined => advice?.find(({ playerId }) => playerId === key);
  const free = choices.find(({ key }) => !keys.includes(key));
  const cells = (words: string, cell: (found: PlayerAdvice) => React.ReactNode): React.JSX.Element => (
    <tr key={words}>
      <th scope="row">{words}</th>
      {keys.map((key) => {
        const found = of(key);
        return <td key={key}>{found === undefined ? '–' : cell(found)}</td>;
      })}
    </tr>
  );
  return (
    <section className="compare players-beside" ref={panel} aria-label="Players beside each other">
      <div className="compare-head">
        <h2>Who plays what</h2>
        {keys.length < MOST_PLAYERS && free !== undefined && (
          <button type="button" className="link-button" onClick={() => setKeys([...keys, free.key])}>
            Add a player
          </button>
        )}
        <button type="button" className="link-button" onClick={close}>
          Done
        </button>
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      {share !== null && (
        <p className="changes-wait" role="status">
          Planning for {keys.length} players, {percent(100 * share)}
        </p>
      )}
      <table>
        <caption className="unseen">
          Advice for each player, the first in red on the plate, the others in grey
        </caption>
        <thead>
          <tr>
            <td />
            {keys.map((key, i) => (
              // By place: another player in it leaves the list of names in hand.
              <th key={i} scope="col" className={i === 0 ? 'first' : ''}>
                <span className="player-head">
                  <span className="compare-key" aria-hidden />
                  {besideMark(i, keys.length)}
                  <span className="player-name">
                    <Switch words={choices.find((choice) => choice.key === key)?.words ?? ''} />
                    <select
                      aria-label={`Player ${i + 1}`}
                      value={key}
                      onChange={({ target }) =>
                        setKeys(keys.map((one, at) => (at === i ? target.value : one)))
                      }
                    >
                      {choices.map((choice) => (
                        <option
                          key={choice.key}
                          value={choice.key}
                          disabled={choice.key !== key && keys.includes(choice.key)}
                        >
                          {choice.words}
                        </option>
                      ))}
                    </select>
                  </span>
                  {keys.length > LEAST_PLAYERS && (
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={`Take player ${i + 1} out`}
                      onClick={() => setKeys(keys.filter((one) => one !== key))}
                    >
                      <X size={14} strokeWidth={1.9} aria-hidden />
                    </button>
                  )}
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {cells('Shot', ({ option }) => (
            <ShotName name={optionName(option)} />
          ))}
          {figureRows(units, ['size', 'reach', 'land', 'aim', 'half', 'upAndDown', 'trouble', 'strokes']).map(
            ({ words, cell }) => cells(words, ({ option }) => cell(option)),
          )}
        </tbody>
      </table>
      <p className="try-hint">A level on its own plays with the bag and the shots of the player in use.</p>
    </section>
  );
}

/** A name with the sign that it can be changed, which never stands alone on a line. */
function Switch({ words }: { readonly words: string }): React.JSX.Element {
  const last = words.lastIndexOf(' ') + 1;
  return (
    <span aria-hidden>
      {words.slice(0, last)}
      <span className="whole">
        {words.slice(last)} <ChevronDown size={13} strokeWidth={2.2} />
      </span>
    </span>
  );
}
