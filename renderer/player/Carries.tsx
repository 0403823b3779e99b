import { useState } from 'react';
import type { Club, MeasuredCarries, PlayerRecord } from '../../shared/atlas/records.ts';
import { LONGEST_CARRY_M } from '../../shared/atlas/schema.ts';
import { distance, withUnit } from '../../shared/units/format.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface CarriesProps {
  readonly player: PlayerRecord;
  readonly units: UnitsPreference;
  readonly put: (annotation: string, changed: Partial<PlayerRecord>) => void;
}

/** Some of a club's three carries, while they are typed one by one. */
type Begun = Partial<MeasuredCarries>;

const swings = [
  ['small', 'smallM'],
  ['medium', 'mediumM'],
  ['long', 'longM'],
] as const;

/** What each club's small, medium and long swing carries, as the player measured it. */
export function Carries({ player, units, put }: CarriesProps): React.JSX.Element {
  const [begun, setBegun] = useState<ReadonlyMap<string, Begun>>(new Map());
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const { unit } = distance(1, units);
  const clubs = player.bag.filter(({ kind }) => kind !== 'putter').toSorted((a, b) => a.loftDeg - b.loftDeg);
  const change = (club: Club, key: keyof MeasuredCarries, typed: string): void => {
    const { carriesM, ...unmeasured } = club;
    try {
      const { [key]: _old, ...others }: Begun = carriesM ?? begun.get(club.id) ?? {};
      const next: Begun =
        typed === ''
          ? others
          : { ...others, [key]: parseLength(typed, unitOf(units), player.paceM, 'Carry') };
      const whole = complete(next, club.name, units);
      setBegun(new Map([...begun, [club.id, next]]));
      if (whole !== null || carriesM !== undefined) {
        const changed: Club = whole === null ? unmeasured : { ...unmeasured, carriesM: whole };
        put(`changed the carries of the ${club.name}`, {
          bag: player.bag.map((one) => (one.id === club.id ? changed : one)),
        });
      }
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  return (
    <>
      <div className="side-head">
        <h2>Measured carries</h2>
      </div>
      {trouble !== null && <Trouble trouble={trouble} />}
      {clubs.length > 0 && (
        <table className="bag carries">
          <thead>
            <tr>
              <th scope="col">Club</th>
              {swings.map(([swing]) => (
                <th scope="col" key={swing}>
                  {swing}, {unit}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {clubs.map((club) => (
              <tr key={club.id}>
                <th scope="row">{club.name}</th>
                {swings.map(([swing, key]) => {
                  const carryM = (club.carriesM ?? begun.get(club.id))?.[key];
                  return (
                    <td key={swing}>
                      <TextField
                        putRight={() => setTrouble(null)}
                        label={`Carry of the ${club.name}, ${swing} swing`}
                        inputMode="decimal"
                        value={carryM === undefined ? '' : distance(carryM, units).text}
                        commit={(typed) => change(club, key, typed)}
                      />
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="player-note">
        {clubs.length === 0 && 'Of every club but the putter, once there is one in the bag. '}Measured on a
        clean lie with your small, medium and long swing. With all three, a plan names the swing by its carry;
        without them, by the speed typical of the level. Lengths may carry a unit: 12&nbsp;yd, 11&nbsp;m,
        14&nbsp;paces.
      </p>
    </>
  );
}

const unitOf = (units: UnitsPreference): 'yd' | 'm' => (units.system === 'yards' ? 'yd' : 'm');

/** All three carries, or null while one is missing. */
function complete(
  { smallM, mediumM, longM }: Begun,
  name: string,
  units: UnitsPreference,
): MeasuredCarries | null {
  for (const carryM of [smallM, mediumM, longM])
    if (carryM !== undefined && !(carryM > 0 && carryM <= LONGEST_CARRY_M))
      throw new InputProblem(
        'bad-carry',
        `The ${name} cannot carry that far.`,
        'Carry',
        `Type a length above nothing and up to ${withUnit(distance(LONGEST_CARRY_M, units))}, or leave the field empty.`,
      );
  if (smallM === undefined || mediumM === undefined || longM === undefined) return null;
  if (!(smallM < mediumM && mediumM < longM))
    throw new InputProblem(
      'carries-not-rising',
      `The carries of the ${name} do not rise from small to long.`,
      'Carry',
      'Make each swing carry farther than the one before; to move all three up, begin with the long one.',
    );
  return { smallM, mediumM, longM };
}
