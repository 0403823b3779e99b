import { Fragment, memo } from 'react';
import { byLabel } from '../../shared/atlas/byLabel.ts';
import type { BallPosition } from '../../shared/atlas/records.ts';
import type { Scene, SceneFlag } from '../../shared/planner/scene.ts';
import { lieText, stanceSlope } from '../../shared/playbook/placeWords.ts';
import { distance } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { ballsShown, groupNames } from '../store/ballGroups.ts';

interface BallListProps {
  readonly balls: readonly BallPosition[];
  readonly ballId: string | null;
  readonly flag: SceneFlag | undefined;
  readonly scene: Scene | null;
  readonly groundReady: boolean;
  readonly units: UnitsPreference;
  /** The group that alone is shown; null shows every ball. */
  readonly group: string | null;
  readonly choose: (id: string) => void;
}

/** Every ball of the hole with its lie and its distance to the flag, by groups. */
export function BallList(props: BallListProps): React.JSX.Element {
  const { balls, ballId, flag, scene, groundReady, units, group, choose } = props;
  const shown = ballsShown(balls, group);
  const groups = groupNames(shown);
  const parts: readonly (string | undefined)[] = [...groups, undefined];
  const row = ({ id, label, name }: BallPosition): React.JSX.Element => {
    const placed = scene?.balls.find(({ record }) => record.id === id);
    const farM =
      placed === undefined || flag === undefined
        ? null
        : Math.hypot(placed.at.eastM - flag.at.eastM, placed.at.northM - flag.at.northM);
    return (
      <Row
        key={id}
        id={id}
        label={label}
        name={name === '' ? `Ball ${label}` : name}
        lie={scene === null || placed === undefined ? '' : lieText(placed, scene)}
        slope={scene === null || placed === undefined || !groundReady ? '' : stanceSlope(placed, scene)}
        far={farM === null ? '–' : distance(farM, units).text}
        chosen={id === ballId}
        choose={choose}
      />
    );
  };
  return (
    <table className="places">
      <caption className="unseen">Ball positions</caption>
      <thead>
        <tr>
          <th scope="col">Name and lie</th>
          <th scope="col">
            {`To flag\u00a0${flag?.record.label ?? ''}`}
            <br />
            {units.system === 'yards' ? 'yd' : 'm'}
          </th>
        </tr>
      </thead>
      <tbody>
        {parts.map((part) => {
          const members = shown.filter((ball) => ball.group === part).toSorted(byLabel);
          if (members.length === 0) return null;
          return (
            <Fragment key={part ?? ''}>
              {groups.length > 0 && (
                <tr className="group-head">
                  <th scope="rowgroup" colSpan={2}>
                    {part ?? 'In no group'}
                  </th>
                </tr>
              )}
              {members.map(row)}
            </Fragment>
          );
        })}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly id: string;
  readonly label: string;
  readonly name: string;
  readonly lie: string;
  readonly slope: string;
  readonly far: string;
  readonly chosen: boolean;
  readonly choose: (id: string) => void;
}

const Row = memo(function Row(props: RowProps): React.JSX.Element {
  const { id, label, name, lie, slope, far, chosen, choose } = props;
  return (
    <tr className={chosen ? 'chosen' : ''} onClick={() => choose(id)}>
      <td>
        <button type="button" aria-pressed={chosen} onClick={() => choose(id)}>
          <span className="round">{label}</span>
          <span>
            <strong>{name}</strong>
            <span className="under">
              {lie}
              <span className="on-slope">{slope}</span>
            </span>
          </span>
        </button>
      </td>
      <td>{far}</td>
    </tr>
  );
});
