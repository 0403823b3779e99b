import { useEffect, useState } from 'react';
import type { SurveyDoubt } from '../../shared/planner/surveyDoubt.ts';
import type { PlanQuestion } from '../../shared/protocol/planning.ts';
import type { Planning } from '../store/planning.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

const MOST_KEPT = 60;
const known = new Map<string, SurveyDoubt>();

interface Found {
  readonly key: string;
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
  readonly stopped: boolean;
}

export interface SurveyDoubtNow {
  readonly doubt: SurveyDoubt | null;
  readonly share: number | null;
  readonly trouble: TroubleWords | null;
  readonly stopped: boolean;
  readonly stop: () => void;
  readonly start: () => void;
}

/**
 * What the survey leaves open of a plan, worked out while it is looked at.
 * @param key names everything it depends on: another key, another answer; an answer to an old one is dropped
 */
export function useSurveyDoubt(
  planning: Pick<Planning, 'surveyDoubt'>,
  key: string,
  question: PlanQuestion | null,
): SurveyDoubtNow {
  const [found, setFound] = useState<Found | null>(null);
  const now = found?.key === key ? found : null;
  const doubt = known.get(key) ?? null;
  const stopped = now?.stopped ?? false;
  const wanted = question !== null && doubt === null && !stopped && (now?.trouble ?? null) === null;
  useEffect(() => {
    if (!wanted) return undefined;
    return planning.surveyDoubt(question, {
      progress: (share) => setFound({ key, share, trouble: null, stopped: false }),
      answer: (answer) => {
        known.set(key, answer);
        const [oldest] = known.keys();
        if (known.size > MOST_KEPT && oldest !== undefined) known.delete(oldest);
        setFound({ key, share: null, trouble: null, stopped: false });
      },
      problem: (trouble) => setFound({ key, share: null, trouble, stopped: false }),
    });
    // The key names the question: a new one of the same key is no other.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [planning, key, wanted]);
  return {
    doubt,
    share: wanted ? (now?.share ?? 0) : null,
    trouble: now?.trouble ?? null,
    stopped,
    stop: () => setFound({ key, share: null, trouble: null, stopped: true }),
    start: () => setFound(null),
  };
}
