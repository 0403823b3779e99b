import { Trash2 } from 'lucide-react';
import { memo, useState } from 'react';
import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import type { HoleLocation } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { type FlagPlace, flagPlace } from '../../shared/playbook/flagPlace.ts';
import { placeFromSheet } from '../../shared/playbook/pinSheet.ts';
import { playBearing } from '../../shared/playbook/placeWords.ts';
import { parseLength } from '../../shared/units/parse.ts';
import { pacesFromMetres } from '../../shared/units/conversions.ts';
import { whole } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { movePlace } from '../store/edits.ts';
import { NameField } from '../ui/NameField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';

interface FlagFormProps {
  readonly flag: HoleLocation;
  /** Where it stands; undefined while the hole is made ready. */
  readonly at: PlanePoint | undefined;
  readonly scene: Scene | null;
  /** Pin sheets there are. */
  readonly sheets: readonly string[];
  readonly taken: ReadonlySet<string>;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}

/** Letter, place in paces and pin sheet of one flag. */
export const FlagForm = memo(function FlagForm(props: FlagFormProps): React.JSX.Element {
  const { flag, at, scene, sheets, taken, units, readOnly, edit } = props;
  const [trouble, setTrouble] = useState<TroubleWords | null>(null);
  const place =
    scene === null || at === undefined ? null : flagPlace(scene.green.polygon, at, playBearing(scene));
  const attempt = (change: () => void): void => {
    try {
      change();
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble({ message: error.message, remedy: error.remedy });
    }
  };
  const stand = (scene: Scene, { onM, fromLeftM, fromRightM }: FlagPlace): void => {
    const nearLeft = fromLeftM <= fromRightM;
    const to = placeFromSheet(
      scene.green.polygon,
      playBearing(scene),
      onM,
      nearLeft ? fromLeftM : fromRightM,
      nearLeft ? 'left' : 'right',
      `Flag ${flag.label}`,
    );
    edit(movePlace(flag, scene.frame.toLonLat(to)));
  };
  const field = (name: string, key: 'onM' | 'fromLeftM' | 'fromRightM'): React.ReactNode =>
    place !== null &&
    scene !== null && (
      <label>
        <span>{name}</span>
        <TextField
          putRight={() => setTrouble(null)}
          inputMode="decimal"
          value={`${whole(pacesFromMetres(place[key], units.paceM))} paces`}
          commit={(typed) =>
            attempt(() => {
              const wanted = parseLength(typed, 'paces', units.paceM, name);
              const other = key === 'fromLeftM' ? 'fromRightM' : 'fromLeftM';
              // The side that is typed is the one held to.
              stand(
                scene,
                key === 'onM' ? { ...place, onM: wanted } : { ...place, [key]: wanted, [other]: Infinity },
              );
            })
          }
        />
      </label>
    );
  const { sheet, ...plain } = flag;
  return (
    <fieldset className="form flag-form" disabled={readOnly} aria-label={`Flag ${flag.label}`}>
      <label>
        <span>Letter</span>
        <TextField
          putRight={() => setTrouble(null)}
          value={flag.label}
          commit={(label) =>
            label === '' || taken.has(label)
              ? setTrouble({
                  message: `There is a flag ${label} on this hole already.`,
                  remedy: 'Give it another letter.',
                })
              : attempt(() => edit(putRecords(`renamed flag ${flag.label}`, [{ ...flag, label }])))
          }
        />
      </label>
      {field('From front', 'onM')}
      {place !== null && place.fromLeftM <= place.fromRightM
        ? field('From left', 'fromLeftM')
        : field('From right', 'fromRightM')}
      <NameField
        name="Pin sheet"
        value={sheet ?? ''}
        known={sheets}
        placeholder="none, or a day"
        commit={(typed) =>
          edit(
            putRecords(
              typed === '' ? `took flag ${flag.label} off its sheet` : `put flag ${flag.label} on ${typed}`,
              [{ ...plain, ...(typed !== '' && { sheet: typed }) }],
            ),
          )
        }
      />
      {!readOnly && (
        <button
          type="button"
          className="button"
          onClick={() => edit(removeRecords(`took flag ${flag.label} away`, [flag.id]))}
        >
          <Trash2 size={16} strokeWidth={1.9} aria-hidden /> Take flag {flag.label} away
        </button>
      )}
      {trouble !== null && <Trouble trouble={trouble} />}
    </fieldset>
  );
});
