import { useState } from 'react';
import type { PlayerLevel, PlayerRecord } from '../../shared/atlas/records.ts';
import { fullSwingMps } from '../../shared/player/swingSize.ts';
import { skillOf } from '../../shared/player/skill.ts';
import { yardsFromMetres } from '../../shared/units/conversions.ts';
import { chance, strokes, wind, withUnit } from '../../shared/units/format.ts';
import { decimals } from '../../shared/units/numerals.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { firstPlayer } from '../store/newAtlas.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface PlayerFormProps {
  readonly player: PlayerRecord;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly put: (annotation: string, changed: Partial<PlayerRecord>) => void;
}

const margins = [0, 0.02, 0.05, 0.08, 0.12, 0.2] as const;
/** Paces walked to calibrate them. */
const WALKED = 20;

/** Name, level, hand, pace, and how much a harder shot must save. */
export function PlayerForm({ player, units, readOnly, put }: PlayerFormProps): React.JSX.Element {
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const attempt = (annotation: string, changed: () => Partial<PlayerRecord>): void => {
    try {
      put(annotation, changed());
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  const { level, paceM, simplicityMarginStrokes: margin } = player;
  const skill = skillOf(level);
  const yards = units.system === 'yards';
  const longUnit = yards ? 'yd' : 'm';
  const walkedM = paceM * WALKED;
  return (
    <>
      <div className="side-head">
        <h2>{player.name}</h2>
      </div>
      {player.name === firstPlayer.name && !readOnly && (
        <p className="player-note invited">
          A bag and a level to begin with. Type your own name, handicap and clubs, and every plan is made for
          you.
        </p>
      )}
      <fieldset className="form" disabled={readOnly}>
        <label>
          <span>Name</span>
          <TextField value={player.name} commit={(name) => attempt('renamed a player', () => ({ name }))} />
        </label>
        <label>
          <span>Level</span>
          <select
            value={level.kind}
            onChange={({ target }) =>
              attempt('changed the level', () => ({ level: levelOf(target.value, level) }))
            }
          >
            <option value="handicap">by handicap</option>
            <option value="beginner">beginner</option>
            <option value="tour">tour</option>
          </select>
        </label>
        {level.kind === 'handicap' && (
          <label>
            <span>Handicap</span>
            <TextField
              putRight={() => setTrouble(null)}
              inputMode="decimal"
              value={String(level.handicap)}
              commit={(typed) =>
                attempt('changed the handicap', () => ({
                  level: { kind: 'handicap', handicap: handicapOf(typed) },
                }))
              }
            />
          </label>
        )}
        <label>
          <span>Plays</span>
          <select
            value={player.handed}
            onChange={({ target }) =>
              put('changed the hand', { handed: target.value === 'left' ? 'left' : 'right' })
            }
          >
            <option value="right">right-handed</option>
            <option value="left">left-handed</option>
          </select>
        </label>
        <label>
          <span>{WALKED} paces are</span>
          <TextField
            putRight={() => setTrouble(null)}
            inputMode="decimal"
            value={`${decimals(yards ? yardsFromMetres(walkedM) : walkedM, 1)} ${longUnit}`}
            commit={(typed) =>
              attempt('calibrated the pace', () => ({
                paceM: parseLength(typed, longUnit, paceM, 'Paces') / WALKED,
              }))
            }
          />
        </label>
        <label>
          <span>A harder shot must save</span>
          <select
            value={margin}
            onChange={({ target }) =>
              put('changed the margin', { simplicityMarginStrokes: Number(target.value) })
            }
          >
            {!margins.some((one) => one === margin) && (
              <option value={margin}>{strokes(margin)} strokes</option>
            )}
            {margins.map((one) => (
              <option key={one} value={one}>
                {one === 0 ? 'anything at all' : `${strokes(one)} strokes`}
              </option>
            ))}
          </select>
        </label>
      </fieldset>
      {trouble !== null && <Trouble trouble={trouble} />}
      <p className="player-note">
        At this level {chance(skill.heavyShare).text} % of ordinary short shots are taken to be heavy and{' '}
        {chance(skill.thinShare).text} % thin; they spread {decimals(skill.shortGame, 1)} times as wide as a
        tour player’s. A full swing moves the clubhead at {withUnit(wind(fullSwingMps(level), units))}.
      </p>
    </>
  );
}

function levelOf(kind: string, before: PlayerLevel): PlayerLevel {
  if (kind === 'tour') return { kind: 'tour' };
  if (kind === 'beginner') return { kind: 'beginner' };
  return before.kind === 'handicap' ? before : { kind: 'handicap', handicap: 18 };
}

function handicapOf(typed: string): number {
  const plus = typed.trim().startsWith('+');
  const value = Number(typed.trim().replace('+', '').replace(',', '.'));
  if (typed.trim() === '' || !Number.isFinite(value) || value < 0 || value > 54) {
    throw new InputProblem(
      'bad-handicap',
      `"${typed.slice(0, 20)}" is no handicap.`,
      'Handicap',
      'Type a number up to 54; better than scratch counts as 0 here.',
    );
  }
  return plus ? 0 : value;
}
