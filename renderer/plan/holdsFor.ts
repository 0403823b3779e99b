import { holdsText } from '../../shared/planner/holdsText.ts';
import type { Derived } from '../store/planStore.ts';

/** How far a firm advice holds, where what would change it was asked of the same choice; null otherwise. */
export const holdsFor = ({
  plan,
  stage,
  switchPoints,
}: Pick<Derived, 'plan' | 'stage' | 'switchPoints'>): string | null =>
  stage === 'firm' && switchPoints !== null && switchPoints.chosenId === plan?.chosenId
    ? holdsText(switchPoints)
    : null;
