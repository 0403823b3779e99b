import { memo, useMemo } from 'react';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { useBeat } from '../ui/useBeat.ts';
import { Leaves } from './Leaves.tsx';
import { Why } from './Why.tsx';
import './beneath.css';

interface BeneathProps {
  readonly plan: Plan;
  readonly option: PlanOption;
  readonly stage: 'none' | 'coarse' | 'firm';
  /** Told of a firm answer only. */
  readonly flag: PlanePoint;
  /** What would change the choice. */
  readonly changes: React.ReactNode;
  readonly handed: 'right' | 'left';
  readonly units: UnitsPreference;
  readonly large: boolean;
}

/** What is read at leisure: the reasons, what would change them, where the shots stop. While all moves it follows at a slower beat. */
export function Beneath({
  moving,
  plan,
  option,
  stage,
  flag,
  changes,
  ...rest
}: BeneathProps & { readonly moving: boolean }): React.JSX.Element {
  const now = useMemo(() => ({ plan, option, stage, flag, changes }), [plan, option, stage, flag, changes]);
  return <Parts {...useBeat(now, moving)} {...rest} />;
}

const Parts = memo(function Parts(props: BeneathProps): React.JSX.Element {
  const { plan, option, stage, flag, changes, handed, units, large } = props;
  return (
    <div className="beneath">
      <Why plan={plan} option={option} coarse={stage === 'coarse'} handed={handed} units={units} />
      <div className="beneath-right">
        {changes}
        {stage === 'firm' && <Leaves option={option} flag={flag} units={units} large={large} />}
      </div>
    </div>
  );
});
