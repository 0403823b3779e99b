import { Trash2 } from 'lucide-react';
import { memo, useState } from 'react';
import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import type { BallPosition } from '../../shared/atlas/records.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { coverWords } from '../../shared/words/coverWords.ts';
import { LieFields } from '../ui/LieFields.tsx';
import { NameField } from '../ui/NameField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Trouble } from '../ui/Trouble.tsx';

interface BallFormProps {
  readonly ball: BallPosition;
  readonly scene: Scene | null;
  /** The slope the player stands on, in words; empty while it is worked out. */
  readonly stance: string;
  /** Groups of balls there are. */
  readonly groups: readonly string[];
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

/** Name, group, ground and lie of one ball. */
export const BallForm = memo(function BallForm(props: BallFormProps): React.JSX.Element {
  const { ball, scene, stance, groups, readOnly, edit } = props;
  const [trouble, setTrouble] = useState('');
  const taken = new Set(
    scene?.balls.flatMap(({ record }) => (record.id === ball.id ? [] : [record.label])) ?? [],
  );
  const placed = scene?.balls.find(({ record }) => record.id === ball.id);
  const under = scene === null || placed === undefined ? '' : coverWords[scene.ground.coverAt(placed.at)];
  const title = ball.name === '' ? `Ball ${ball.label}` : `Ball ${ball.label}, ${lowerFirst(ball.name)}`;
  const { moistureOverride, group, ...plain } = ball;
  const put = (what: string, changed: BallPosition): void => edit(putRecords(what, [changed]));
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
            commit={(name) => put(`named ball ${ball.label}`, { ...ball, name })}
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
                put(`renumbered ball ${ball.label}`, { ...ball, label });
              }
            }}
          />
        </label>
        <NameField
          name="Group"
          value={group ?? ''}
          known={groups}
          placeholder="none"
          commit={(typed) =>
            put(
              typed === ''
                ? `took ball ${ball.label} out of ${group ?? ''}`
                : `put ball ${ball.label} in ${typed}`,
              {
                ...plain,
                ...(moistureOverride !== undefined && { moistureOverride }),
                ...(typed !== '' && { group: typed }),
              },
            )
          }
        />
        <LieFields
          chosen={{ cover: ball.coverOverride, lie: ball.lie, moisture: moistureOverride ?? null }}
          asIs={{
            cover: under === '' ? 'from the map' : `${under} (map)`,
            lie: null,
            moisture: scene === null ? 'as the day' : `${scene.conditions.moisture} (day)`,
          }}
          change={({ cover, lie, moisture }) => {
            if (cover !== undefined)
              put(`set the ground of ball ${ball.label}`, { ...ball, coverOverride: cover });
            else if (lie !== undefined)
              put(`set the lie of ball ${ball.label}`, { ...ball, lie: lie ?? ball.lie });
            else
              put(`set the moisture of ball ${ball.label}`, {
                ...plain,
                ...(group !== undefined && { group }),
                ...(moisture !== undefined && moisture !== null && { moistureOverride: moisture }),
              });
          }}
        />
        {stance !== '' && <p className="stance">{stance}</p>}
        {!readOnly && (
          <button
            type="button"
            className="button"
            onClick={() => edit(removeRecords(`took ball ${ball.label} away`, [ball.id]))}
          >
            <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Take it away
          </button>
        )}
      </fieldset>
      {trouble !== '' && <Trouble trouble={{ message: trouble, remedy: 'Give it another number.' }} />}
    </>
  );
});

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
