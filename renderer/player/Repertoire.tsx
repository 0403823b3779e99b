import type { PlayerRecord } from '../../shared/atlas/records.ts';
import { techniqueName } from '../../shared/planner/optionName.ts';
import { strokes } from '../../shared/units/format.ts';
import { type Technique, techniques } from '../../shared/words/vocabulary.ts';

interface RepertoireProps {
  readonly player: PlayerRecord;
  readonly readOnly: boolean;
  readonly put: (annotation: string, changed: Partial<PlayerRecord>) => void;
}

const marks = [
  { mark: 'mine', words: 'Mine' },
  { mark: 'learning', words: 'Learning' },
  { mark: 'notMine', words: 'Not mine' },
] as const;

/** Which shots the player has, and what that does to the advice. */
export function Repertoire({ player, readOnly, put }: RepertoireProps): React.JSX.Element {
  const { repertoire, simplicityMarginStrokes: margin } = player;
  const set = (technique: Technique, mark: (typeof marks)[number]['mark']): void =>
    put(`marked the ${techniqueName(technique).toLowerCase()}`, {
      repertoire: { ...repertoire, [technique]: mark },
    });
  return (
    <fieldset disabled={readOnly}>
      <div className="side-head">
        <h2>Shots</h2>
      </div>
      <table className="repertoire">
        <caption className="unseen">Every technique, and whether it is the player’s own</caption>
        <thead>
          <tr>
            <td />
            {marks.map(({ mark, words }) => (
              <th key={mark} scope="col">
                {words}
              </th>
            ))}
            <th scope="col">Must save, strokes</th>
          </tr>
        </thead>
        <tbody>
          {techniques.map((technique) => (
            <tr key={technique}>
              <th scope="row">{techniqueName(technique)}</th>
              {marks.map(({ mark, words }) => (
                <td key={mark}>
                  <input
                    type="radio"
                    name={technique}
                    aria-label={`${techniqueName(technique)}: ${words.toLowerCase()}`}
                    checked={(repertoire[technique] ?? 'mine') === mark}
                    onChange={() => set(technique, mark)}
                  />
                </td>
              ))}
              <td className="must-save">{mustSave(player, technique)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="player-note">
        “Must save” is what the shot has to save in strokes over a simpler one before it is advised; learning
        adds {strokes(margin)} to it. One that is not yours is left out, and the plan says so.
      </p>
    </fieldset>
  );
}

/** Strokes a technique has to save over a simpler one; the simplest has none to beat. */
function mustSave(
  { repertoire, simplicityMarginStrokes: margin }: PlayerRecord,
  technique: Technique,
): string {
  const mark = repertoire[technique] ?? 'mine';
  if (mark === 'notMine') return 'left out';
  const simplest = technique === techniques[0];
  const save = (simplest ? 0 : margin) + (mark === 'learning' ? margin : 0);
  return simplest && mark === 'mine' ? '–' : strokes(save);
}
