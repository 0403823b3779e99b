import { Plus, Trash2 } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import type { Club, PlayerRecord } from '../../shared/atlas/records.ts';
import { clubLimits } from '../../shared/atlas/playerRecords.ts';
import { decimals } from '../../shared/units/numerals.ts';
import { parseDegrees } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { clubKinds } from '../../shared/words/vocabulary.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import { Carries } from './Carries.tsx';
import { focusText } from './focusText.ts';

interface BagProps {
  readonly player: PlayerRecord;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly put: (annotation: string, changed: Partial<PlayerRecord>) => void;
}

/** Every club with its kind, loft and bounce, and its carries where measured. */
export function Bag({ player, units, readOnly, put }: BagProps): React.JSX.Element {
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const { bag } = player;
  const change = (club: Club, what: string, changed: () => Partial<Club>): void => {
    try {
      const next = { ...club, ...changed() };
      put(`changed the ${what} of the ${next.name}`, {
        bag: bag.map((one) => (one.id === club.id ? next : one)),
      });
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  const add = (): void => {
    const loftDeg =
      Math.max(...bag.filter(({ kind }) => kind !== 'putter').map((club) => club.loftDeg), 42) + 4;
    const club: Club = {
      id: crypto.randomUUID(),
      kind: 'wedge',
      name: `${Math.min(64, loftDeg)}° wedge`,
      loftDeg: Math.min(64, loftDeg),
      bounceDeg: 10,
    };
    put(`added the ${club.name}`, { bag: [...bag, club] });
    toName.current = club.id;
  };
  const toName = useRef<string | null>(null);
  const rows = useRef<HTMLTableSectionElement>(null);
  useEffect(() => {
    const { current: id } = toName;
    if (id === null || !bag.some((club) => club.id === id)) return;
    toName.current = null;
    focusText([...(rows.current?.rows ?? [])].find((row) => row.dataset['club'] === id));
  }, [bag]);
  return (
    <fieldset disabled={readOnly}>
      <div className="side-head">
        <h2>Bag</h2>
        {!readOnly && (
          <button type="button" className="button" onClick={add}>
            <Plus size={17} strokeWidth={1.9} aria-hidden /> Add a club
          </button>
        )}
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      <table className="bag">
        <thead>
          <tr>
            <th scope="col">Club</th>
            <th scope="col">Kind</th>
            <th scope="col">Loft, °</th>
            <th scope="col">Bounce,{'\u00a0'}°</th>
            <td />
          </tr>
        </thead>
        <tbody ref={rows}>
          {bag
            .toSorted((a, b) => a.loftDeg - b.loftDeg)
            .map((club) => (
              <tr key={club.id} data-club={club.id}>
                <td>
                  <TextField
                    putRight={() => setTrouble(null)}
                    label={`Name of the ${club.name}`}
                    value={club.name}
                    commit={(name) => change(club, 'name', () => ({ name }))}
                  />
                </td>
                <td>
                  <select
                    aria-label={`Kind of the ${club.name}`}
                    value={club.kind}
                    onChange={({ target }) =>
                      change(club, 'kind', () => ({
                        kind: clubKinds.find((kind) => kind === target.value) ?? club.kind,
                      }))
                    }
                  >
                    {clubKinds.map((kind) => (
                      <option key={kind}>{kind}</option>
                    ))}
                  </select>
                </td>
                <td>
                  <TextField
                    putRight={() => setTrouble(null)}
                    label={`Loft of the ${club.name}`}
                    inputMode="decimal"
                    value={String(club.loftDeg)}
                    commit={(typed) => change(club, 'loft', () => ({ loftDeg: degrees(typed, 'loft') }))}
                  />
                </td>
                <td>
                  <TextField
                    putRight={() => setTrouble(null)}
                    label={`Bounce of the ${club.name}`}
                    inputMode="decimal"
                    value={String(club.bounceDeg)}
                    commit={(typed) =>
                      change(club, 'bounce', () => ({ bounceDeg: degrees(typed, 'bounce') }))
                    }
                  />
                </td>
                <td>
                  {bag.length > 1 && !readOnly && (
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={`Take the ${club.name} out`}
                      title="Take it out of the bag"
                      onClick={() =>
                        put(`took the ${club.name} out of the bag`, {
                          bag: bag.filter(({ id }) => id !== club.id),
                        })
                      }
                    >
                      <Trash2 size={16} strokeWidth={1.9} aria-hidden />
                    </button>
                  )}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <p className="player-note">
        Loft and bounce as stamped or as a fitter measured them. What the club meets the ball with is worked
        out for each shot.
      </p>
      <Carries player={player} units={units} put={put} />
    </fieldset>
  );
}

/** Degrees as typed, of what a club can have. */
function degrees(typed: string, what: 'loft' | 'bounce'): number {
  const name = what === 'loft' ? 'Loft' : 'Bounce';
  const value = parseDegrees(typed, name);
  const { least, most } = clubLimits[what];
  if (value < least || value > most)
    throw new InputProblem(
      'angle-out-of-range',
      `no club has ${decimals(value, 1)}°.`,
      name,
      `Type a number from ${decimals(least, 0)} to ${String(most)}.`,
    );
  return value;
}
