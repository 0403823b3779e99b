import type { PlanOption } from '../../shared/planner/plan.ts';
import { metresFromFeet } from '../../shared/units/conversions.ts';
import { chance } from '../../shared/units/format.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

interface LeavesProps {
  readonly option: PlanOption;
  readonly flag: PlanePoint;
  readonly units: UnitsPreference;
}

const HOLED = 254;

/** How far from the hole the simulated balls stop, as shares. */
export function Leaves({ option, flag, units }: LeavesProps): React.JSX.Element {
  const rows = leaveShares(option, flag, units);
  return (
    <section className="leaves" aria-label="Where they stop">
      <h2>Where they stop</h2>
      <dl>
        {rows.map(({ words, share }) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd>
              <span className="leaves-bar" style={{ inlineSize: `${Math.round(share * 100)}%` }} />
              <span>{chance(share).text} %</span>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function leaveShares(
  { finishesM, finishCodes, chances }: PlanOption,
  flag: PlanePoint,
  units: UnitsPreference,
): readonly { readonly words: string; readonly share: number }[] {
  const yards = units.system === 'yards';
  const limits = yards ? [3, 6, 10, 20] : [1, 2, 3, 6];
  const unit = yards ? 'ft' : 'm';
  const counts = [...limits.map(() => 0), 0];
  for (let i = 0; i < finishCodes.length; i += 1) {
    if (finishCodes[i] === HOLED) continue;
    const leftM = Math.hypot((finishesM[2 * i] ?? 0) - flag.eastM, (finishesM[2 * i + 1] ?? 0) - flag.northM);
    const band = limits.findIndex((limit) => leftM <= (yards ? metresFromFeet(limit) : limit));
    const index = band < 0 ? limits.length : band;
    counts[index] = (counts[index] ?? 0) + 1;
  }
  const share = (count: number): number => count / Math.max(1, finishCodes.length);
  return [
    { words: 'holed', share: chances.holed },
    ...limits.map((limit, i) => ({
      words: i === 0 ? `within ${limit} ${unit}` : `${limits[i - 1] ?? 0} to ${limit} ${unit}`,
      share: share(counts[i] ?? 0),
    })),
    { words: `over ${limits[limits.length - 1] ?? 0} ${unit}`, share: share(counts[limits.length] ?? 0) },
  ];
}
