import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import type { BallPosition } from '../../shared/atlas/records.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { coverWords } from '../../shared/words/coverWords.ts';
import { covers, lieQualities } from '../../shared/words/vocabulary.ts';
import { TextField } from '../ui/TextField.tsx';
import { Trouble } from '../ui/Trouble.tsx';
import { lieWords } from '../ui/words.ts';

interface BallFormProps {
  readonly ball: BallPosition;
  readonly scene: Scene | null;
  /** The slope the player stands on, in words; empty while it is worked out. */
  readonly stance: string;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

const FROM_MAP = 'map';

/** Name, ground and lie of one ball. */
export function BallForm({ ball, scene, stance, readOnly, edit }: BallFormProps): React.JSX.Element {
  const [trouble, setTrouble] = useState('');
  const taken = new Set(
    scene?.balls.flatMap(({ record }) => (record.id === ball.id ? [] : [record.label])) ?? [],
  );
  const placed = scene?.balls.find(({ record }) => record.id === ball.id);
  const under = scene === null || placed === undefined ? '' : coverWords[scene.ground.coverAt(placed.at)];
  const title = ball.name === '' ? `Ball ${ball.label}` : `Ball ${ball.label}, ${lowerFirst(ball.name)}`;
  return (
    <>
      <div className="side-head">
        <h2>{title}</h2>
      </div>
      <fieldset className="form" disabled={readOnly}>
        <label>
          <span>Name</span>
          <TextField
            value={ball.name}
            commit={(name) => edit(putRecords(`named ball ${ball.label}`, [{ ...ball, name }]))}
          />
        </label>
        <label>
          <span>Number</span>
          <TextField
            value={ball.label}
            commit={(label) => {
              if (label === '' || taken.has(label))
                setTrouble(`There is a ball ${label} on this hole already.`);
              else {
                setTrouble('');
                edit(putRecords(`renumbered ball ${ball.label}`, [{ ...ball, label }]));
              }
            }}
          />
        </label>
        <label>
          <span>Ground</span>
          <select
            value={ball.coverOverride ?? FROM_MAP}
            onChange={({ target }) => {
              const coverOverride = covers.find((cover) => cover === target.value) ?? null;
              edit(putRecords(`set the ground of ball ${ball.label}`, [{ ...ball, coverOverride }]));
            }}
          >
            <option value={FROM_MAP}>{under === '' ? 'from the map' : `${under}, from the map`}</option>
            {covers.map((cover) => (
              <option key={cover} value={cover}>
                {coverWords[cover]}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Lie</span>
          <select
            value={ball.lie}
            onChange={({ target }) => {
              const lie = lieQualities.find((quality) => quality === target.value) ?? ball.lie;
              edit(putRecords(`set the lie of ball ${ball.label}`, [{ ...ball, lie }]));
            }}
          >
            {lieQualities.map((quality) => (
              <option key={quality} value={quality}>
                {lieWords[quality]}
              </option>
            ))}
          </select>
        </label>
        {stance !== '' && <p className="stance">{stance}</p>}
        <button
          type="button"
          className="button"
          onClick={() => edit(removeRecords(`took ball ${ball.label} away`, [ball.id]))}
        >
          <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Take it away
        </button>
      </fieldset>
      {trouble !== '' && <Trouble trouble={{ message: trouble, remedy: 'Give it another number.' }} />}
    </>
  );
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
