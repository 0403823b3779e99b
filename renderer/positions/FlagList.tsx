import { memo } from 'react';
import { byLabel } from '../../shared/atlas/byLabel.ts';
import type { HoleLocation } from '../../shared/atlas/records.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { flagWords } from '../../shared/playbook/placeWords.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

interface FlagListProps {
  readonly flags: readonly HoleLocation[];
  readonly flagId: string | null;
  readonly scene: Scene | null;
  readonly groundReady: boolean;
  readonly units: UnitsPreference;
  readonly choose: (id: string) => void;
}

/** The flags in play with their places and slopes; those of another pin sheet are named below. */
export const FlagList = memo(function FlagList({
  flags,
  flagId,
  scene,
  groundReady,
  units,
  choose,
}: FlagListProps): React.JSX.Element {
  const inPlay = new Set(scene?.flags.map(({ record }) => record.id) ?? flags.map(({ id }) => id));
  const elsewhere = flags.filter(({ id }) => !inPlay.has(id)).toSorted(byLabel);
  return (
    <>
      <table className="places">
        <caption className="unseen">Hole locations</caption>
        <tbody>
          {flags
            .filter(({ id }) => inPlay.has(id))
            .toSorted(byLabel)
            .map(({ id, label, sheet }) => {
              const placed = scene?.flags.find(({ record }) => record.id === id);
              const told = scene === null || placed === undefined ? null : flagWords(scene, placed, units);
              const slope = groundReady ? (told?.slopeText ?? '') : '';
              return (
                <tr key={id} className={id === flagId ? 'chosen' : ''} onClick={() => choose(id)}>
                  <td>
                    <button type="button" aria-pressed={id === flagId} onClick={() => choose(id)}>
                      <span className="square">{label}</span>
                      <span>
                        {told?.placeText ?? ''}
                        <span className="under">{sheet === undefined ? slope : `${sheet}: ${slope}`}</span>
                      </span>
                    </button>
                  </td>
                </tr>
              );
            })}
        </tbody>
      </table>
      {elsewhere.length > 0 && (
        <p className="stance">
          Not on the sheet of this day:{' '}
          {elsewhere
            .map(({ label, sheet }) => (sheet === undefined ? label : `${label} (${sheet})`))
            .join(', ')}
          .
        </p>
      )}
    </>
  );
});
