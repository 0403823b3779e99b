import { useStore } from 'zustand';
import type { Conditions } from '../../shared/ball/shot.ts';
import { holdsText } from '../../shared/planner/holdsText.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { SwitchPoints, WhatIf } from '../../shared/planner/switchPoints.ts';
import { derivedStore } from '../store/planStore.ts';
import { percent, strokes } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Choice } from './Chooser.tsx';
import { circumstance } from './circumstance.ts';
import { listed } from './listed.ts';
import { ShotName } from './ShotName.tsx';

interface WhatChangesProps {
  readonly found: SwitchPoints | null;
  /** The plan whose choice it is about. */
  readonly plan: Plan;
  readonly conditions: Pick<Conditions, 'stimpFt' | 'firmness'>;
  readonly flags: readonly Choice[];
  readonly units: UnitsPreference;
  readonly chooseFlag: (id: string) => void;
  /** Sets an option beside the choice. */
  readonly beside: (id: string) => void;
}

/** What would change the choice, one row each with what to take then, and what would not. */
export function WhatChanges(props: WhatChangesProps): React.JSX.Element | null {
  const { found } = props;
  const share = useStore(derivedStore, ({ switchShare }) => switchShare);
  if (found === null && share === null) return null;
  const rows = found === null ? [] : rowsOf(found, props);
  return (
    <section className="changes" aria-label="What would change it">
      <h2>What would change it</h2>
      {found === null ? (
        <p className="changes-wait">Trying other days and flags, {percent(100 * (share ?? 0))}</p>
      ) : (
        found.holdsThroughout && <p>Nothing ordinary: it holds for {holdsText(found)}.</p>
      )}
      {rows.length > 0 && (
        <table>
          <caption className="unseen">Circumstances, and the choice they lead to</caption>
          <tbody>
            {rows.map(({ words, then, cost, act }) => (
              <tr key={words}>
                <th scope="row">{words}</th>
                <td title={cost}>
                  {act === null ? (
                    then
                  ) : (
                    <button type="button" className="link-button" title={act.words} onClick={act.run}>
                      <ShotName name={then} />
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

interface Row {
  readonly words: string;
  readonly then: string;
  readonly cost: string;
  /** What pressing the answer does; null where there is nothing to look at. */
  readonly act: { readonly words: string; readonly run: () => void } | null;
}

/** What leads elsewhere, then what does not; where nothing ordinary does, the next level of player alone is told. */
function rowsOf({ whatIfs, holdsThroughout }: SwitchPoints, props: WhatChangesProps): readonly Row[] {
  const { plan, conditions, flags, units, chooseFlag, beside } = props;
  const chosen = plan.options.find(({ id }) => id === plan.chosenId);
  const chosenName = chosen === undefined ? 'It' : optionName(chosen);
  const actOf = ({ what, tried, chosenId }: WhatIf): Row['act'] => {
    const flag = what === 'flag' ? flags.find(({ label }) => label === tried) : undefined;
    if (flag !== undefined) return { words: `Plan to flag ${flag.label}`, run: () => chooseFlag(flag.id) };
    return plan.options.some(({ id }) => id === chosenId && id !== plan.chosenId)
      ? { words: `Set it beside ${chosenName} as the day is`, run: () => beside(chosenId) }
      : null;
  };
  const rows = whatIfs
    .filter(({ holds }) => !holds)
    .map((whatIf) => ({
      words: circumstance(whatIf, conditions, units),
      then: `take ${whatIf.chosenName}`,
      cost:
        whatIf.keepingCostsStrokes === null
          ? `${chosenName} is no option then`
          : `Keeping to ${chosenName} would cost ${strokes(whatIf.keepingCostsStrokes)} strokes then`,
      act: actOf(whatIf),
    }));
  const held = whatIfs.flatMap(({ what, holds, tried }) => (what === 'flag' && holds ? [String(tried)] : []));
  const kinds = (['stimp', 'firmness', 'moisture', 'wind', 'slope', 'flagstick'] as const).filter(
    (kind) =>
      whatIfs.some(({ what }) => what === kind) && whatIfs.every(({ what, holds }) => what !== kind || holds),
  );
  const same = (words: string): Row => ({ words, then: 'no change', cost: '', act: null });
  const level = whatIfs.filter(({ what, holds }) => what === 'level' && holds);
  const sameLevel = level.map((whatIf) => same(circumstance(whatIf, conditions, units)));
  if (holdsThroughout) return [...rows, ...sameLevel];
  return [
    ...rows,
    ...sameLevel,
    ...(held.length === 0 ? [] : [same(`${held.length === 1 ? 'Flag' : 'Flags'} ${listed(held)}`)]),
    ...(kinds.length === 0 ? [] : [same(capital(listed(kinds.map((kind) => steady[kind]))))]),
  ];
}

const steady = {
  stimp: 'a foot of green speed',
  firmness: 'firmness',
  moisture: 'moisture',
  wind: 'wind',
  slope: 'half a percent of slope',
  flagstick: 'the flagstick',
} as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
