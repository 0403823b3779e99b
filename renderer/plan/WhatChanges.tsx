import type { SwitchPoints, WhatIf } from '../../shared/planner/switchPoints.ts';
import { greenSpeed, strokes, wind, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

interface WhatChangesProps {
  readonly found: SwitchPoints | null;
  readonly share: number | null;
  readonly chosenName: string;
  readonly stimpFt: number;
  readonly firmness: number;
  readonly units: UnitsPreference;
}

/** What would change the choice, one row each, and what would not. */
export function WhatChanges(props: WhatChangesProps): React.JSX.Element | null {
  const { found, share, units } = props;
  if (found === null && share === null) return null;
  return (
    <section className="changes" aria-label="What would change it">
      <h2>What would change it</h2>
      {found === null ? (
        <p className="changes-wait">Trying other days and flags, {Math.round((share ?? 0) * 100)} %</p>
      ) : found.holdsThroughout ? (
        <p>Nothing ordinary: it holds for every flag and any usual day.</p>
      ) : (
        <table>
          <caption className="unseen">Circumstances, and the choice they lead to</caption>
          <tbody>
            {rowsOf(found, props, units).map(({ words, then, cost }) => (
              <tr key={words}>
                <th scope="row">{words}</th>
                <td title={cost}>{then}</td>
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
}

function rowsOf(
  { whatIfs }: SwitchPoints,
  { stimpFt, firmness, chosenName }: WhatChangesProps,
  units: UnitsPreference,
): readonly Row[] {
  const changed = whatIfs.filter(({ holds }) => !holds);
  const rows = changed.map((whatIf) => ({
    words: circumstance(whatIf, stimpFt, firmness, units),
    then: whatIf.chosenName,
    cost:
      whatIf.keepingCostsStrokes === null
        ? `${chosenName} is no option then`
        : `Keeping to it would cost ${strokes(whatIf.keepingCostsStrokes)} strokes then`,
  }));
  const flags = whatIfs.flatMap(({ what, holds, tried }) =>
    what === 'flag' && holds ? [String(tried)] : [],
  );
  const kinds = (['stimp', 'firmness', 'moisture', 'wind', 'slope'] as const).filter(
    (kind) =>
      whatIfs.some(({ what }) => what === kind) && whatIfs.every(({ what, holds }) => what !== kind || holds),
  );
  const same = (words: string): Row => ({ words, then: 'no change', cost: '' });
  return [
    ...rows,
    ...(flags.length === 0 ? [] : [same(`${flags.length === 1 ? 'Flag' : 'Flags'} ${listed(flags)}`)]),
    ...(kinds.length === 0 ? [] : [same(capital(listed(kinds.map((kind) => steady[kind]))))]),
  ];
}

const steady = {
  stimp: 'a foot of green speed',
  firmness: 'firmness',
  moisture: 'moisture',
  wind: 'wind',
  slope: 'half a percent of slope',
} as const;

function circumstance(
  { what, tried, switchAt }: WhatIf,
  stimpFt: number,
  firmness: number,
  units: UnitsPreference,
): string {
  const value = typeof tried === 'number' ? tried : NaN;
  switch (what) {
    case 'stimp':
      return `Green speed ${value > stimpFt ? 'over' : 'under'} ${withUnit(greenSpeed(switchAt ?? value))}`;
    case 'firmness':
      return value > firmness ? 'Firmer ground' : 'Softer ground';
    case 'moisture':
      return `Ground ${tried}`;
    case 'slope':
      return `Half a percent more ${value > 0 ? 'uphill' : 'downhill'}`;
    case 'wind':
      return `${withUnit(wind(Math.abs(value), units))} of wind ${value > 0 ? 'against' : 'behind'}`;
    case 'level':
      return typeof tried === 'number' ? `A player of handicap ${tried}` : `A ${tried} player`;
    case 'flag':
      return `Flag ${tried}`;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
