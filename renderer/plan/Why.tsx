import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { reasonText } from '../../shared/planner/reasonText.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { SetUp } from './SetUp.tsx';

interface WhyProps {
  readonly plan: Plan;
  readonly option: PlanOption;
  readonly coarse: boolean;
  readonly handed: 'right' | 'left';
  readonly units: UnitsPreference;
}

/** Why the option looked at, or why not. */
export function Why({ plan, option, coarse, handed, units }: WhyProps): React.JSX.Element {
  const advice = plan.options.find(({ id }) => id === plan.chosenId);
  const advised = option.id === plan.chosenId;
  // The first answer has looked at the likely shots alone: what it calls the only one may not be.
  const reasons = option.reasons.filter(({ kind }) => !coarse || kind !== 'onlyShot');
  return (
    <section className="why" aria-label={advised ? 'Why this one' : 'Why not this one'}>
      <h2>
        {advised || advice === undefined ? 'Why this one' : `Why not this one: against ${optionName(advice)}`}
      </h2>
      {reasons.map((reason, index) => (
        <p key={index}>{reasonText(reason, units)}</p>
      ))}
      <SetUp technique={option.technique} handed={handed} />
      {plan.leftOut.length > 0 && (
        <details className="left-out">
          <summary>
            {plan.leftOut.length === 1
              ? 'One shot was left out'
              : `${plan.leftOut.length} shots were left out`}
          </summary>
          {plan.leftOut.map(({ id, reason }) => (
            <p key={id}>{reasonText(reason, units)}</p>
          ))}
        </details>
      )}
    </section>
  );
}
