import { holdsText } from '../../shared/planner/holdsText.ts';
import type { SwitchPoints, WhatIf } from '../../shared/planner/switchPoints.ts';
import type { Derived } from '../store/planStore.ts';
import { listed } from './listed.ts';
import type { AdviceHolds } from './Standing.tsx';

/** How far a firm advice holds, where what would change it was asked of the same choice; null otherwise. */
export function holdsFor({
  plan,
  stage,
  switchPoints,
}: Pick<Derived, 'plan' | 'stage' | 'switchPoints'>): AdviceHolds | null {
  if (stage !== 'firm' || switchPoints === null || switchPoints.chosenId !== plan?.chosenId) return null;
  const holds = holdsText(switchPoints);
  return holds === null
    ? { kind: 'changes', words: listed(changers(switchPoints)) }
    : { kind: 'holds', words: holds };
}

const words: Readonly<Record<Exclude<WhatIf['what'], 'level'>, string>> = {
  flag: 'the flag',
  stimp: 'green speed',
  firmness: 'firmness',
  moisture: 'moisture',
  wind: 'wind',
  slope: 'half a percent of slope',
  flagstick: 'the flagstick',
};

/** What leads to another choice, each kind once. */
const changers = ({ whatIfs }: Pick<SwitchPoints, 'whatIfs'>): readonly string[] => [
  ...new Set(whatIfs.flatMap(({ what, holds }) => (holds || what === 'level' ? [] : [words[what]]))),
];
