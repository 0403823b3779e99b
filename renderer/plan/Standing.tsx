import { Check } from 'lucide-react';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { strokes } from '../../shared/units/format.ts';
import type { Derived } from '../store/planStore.ts';

interface StandingProps {
  readonly option: PlanOption;
  /** Null where the plan has none. */
  readonly advice: PlanOption | null;
  /** Whether the option is one of the plan's own: a shot tried, or another player's, is not. */
  readonly listed: boolean;
  readonly coarse: boolean;
  /** How far the advice holds, once that is known. */
  readonly holds: AdviceHolds | null;
  /** The plan is from before a change. */
  readonly stale: Derived['stale'];
  /** The firm answer was given up. */
  readonly stopped: boolean;
  readonly planAgain: () => void;
  readonly toAdvice: () => void;
}

/** What the choice holds for, or what changes it. */
export interface AdviceHolds {
  readonly kind: 'holds' | 'changes';
  readonly words: string;
}

/**
 * How the option looked at stands: whether the plan is still to be trusted; of the advice, how far it holds; of any other,
 * what it costs, and the way back. The line is kept free until there is something to say, so that nothing beneath it moves.
 */
export function Standing(props: StandingProps): React.JSX.Element {
  const { option, advice, listed, coarse, holds, stale, stopped, planAgain, toAdvice } = props;
  if (stale !== false || stopped)
    return (
      <p className="standing standing-note">
        <span>
          {stale === false
            ? 'Stopped at a first answer: only the shots near the best, each tried less often than for a firm answer.'
            : 'From before a change of place, ground or day.'}
        </span>
        {stale === 'refreshing' ? (
          'Refreshing.'
        ) : (
          <button type="button" className="link-button" data-takes-up onClick={planAgain}>
            {stopped ? 'Go on' : 'Plan it'}
          </button>
        )}
      </p>
    );
  return (
    <p className="standing">
      {advice === null || option.id === advice.id ? (
        listed &&
        holds !== null &&
        (holds.kind === 'changes' ? (
          `Changes with ${holds.words}`
        ) : (
          <>
            <Check size={16} strokeWidth={2.2} aria-hidden /> Holds for {holds.words}
          </>
        ))
      ) : (
        <>
          {listed && !coarse && <span>{costWords(option, advice)}</span>}
          <button type="button" className="link-button" onClick={toAdvice}>
            Back to the advice
          </button>
        </>
      )}
    </p>
  );
}

/** "0.36 strokes more than the advice", or level with it. */
export function costWords(option: PlanOption, advice: PlanOption): string {
  const cost = option.strokes - advice.strokes;
  const asGood = (one: PlanOption): boolean => one.level || one.costStrokes === 0;
  if (Math.abs(cost) < 0.005 || (asGood(option) && asGood(advice))) return 'Level with the advice';
  return `${strokes(Math.abs(cost))} strokes ${cost > 0 ? 'more' : 'fewer'} than the advice`;
}
