import type { Derived } from '../store/planStore.ts';
import { Flag, Plus } from 'lucide-react';
import { focusInstead } from '../ui/giveFocusBack.ts';
import { Trouble } from '../ui/Trouble.tsx';
import type { Choice } from './Chooser.tsx';
import './answer.css';

const missing = {
  ball: {
    title: 'No ball yet',
    remedy: 'Pin a ball position beside this green, and the plan for it appears here.',
    act: 'Pin a ball',
  },
  flag: {
    title: 'No flag yet',
    remedy: 'Stand a flag on this green, and the plan to it appears here.',
    act: 'Stand a flag',
  },
} as const;

interface UnplannedProps {
  readonly derived: Pick<Derived, 'plan' | 'planTrouble' | 'stale'>;
  readonly balls: readonly Choice[];
  readonly flags: readonly Choice[];
  readonly ball: Choice | undefined;
  readonly flag: Choice | undefined;
  readonly planAgain: () => void;
  readonly toPositions: () => void;
}

/** What stands where an answer would: what a plan is still without, why there is none, or that it is being worked out. */
export function Unplanned({
  derived,
  balls,
  flags,
  ball,
  flag,
  planAgain,
  toPositions,
}: UnplannedProps): React.JSX.Element | null {
  const { plan, planTrouble, stale } = derived;
  if (planTrouble !== null) return <Trouble trouble={planTrouble} />;
  if (balls.length === 0 || flags.length === 0) {
    const what = balls.length === 0 ? 'ball' : 'flag';
    const { title, remedy, act } = missing[what];
    const Sign = what === 'ball' ? Plus : Flag;
    return (
      <div className="answer-empty">
        <h1 className="answer-name">{title}</h1>
        <p>{remedy}</p>
        <div className="actions">
          <button
            type="button"
            className="button filled"
            onClick={() => {
              toPositions();
              focusInstead(what === 'ball' ? '.positions-balls .button' : '.positions-side .button-flag');
            }}
          >
            <Sign size={18} strokeWidth={1.9} aria-hidden /> {act}
          </button>
        </div>
      </div>
    );
  }
  if (plan !== null || ball === undefined || flag === undefined) return null;
  const line = `${ball.name}, to flag ${flag.label}`;
  return stale === 'givenUp' ? (
    <div className="answer-empty">
      <p className="answer-line">{line}</p>
      <h1 className="answer-name">Not planned</h1>
      <p role="status">You stopped before there was an answer.</p>
      <div className="actions">
        <button type="button" className="button filled" data-takes-up onClick={planAgain}>
          Plan it
        </button>
      </div>
    </div>
  ) : (
    <p className="answer-line" role="status">
      {line}: working it out
    </p>
  );
}
