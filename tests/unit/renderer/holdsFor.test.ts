import { expect, it } from 'vitest';
import type { Plan } from '../../../shared/planner/plan.ts';
import type { SwitchPoints, WhatIf } from '../../../shared/planner/switchPoints.ts';
import { holdsFor } from '../../../renderer/plan/holdsFor.ts';

const whatIf = (what: WhatIf['what'], holds: boolean): WhatIf => ({
  what,
  tried: 1,
  holds,
  chosenId: 'chip',
  chosenName: 'Chip',
  keepingCostsStrokes: 0.1,
  switchAt: null,
});
const found = (whatIfs: readonly WhatIf[]): SwitchPoints => ({
  chosenId: 'putt',
  whatIfs,
  holdsThroughout: whatIfs.every(({ what, holds }) => holds || what === 'level'),
  holdsForEveryFlag: whatIfs.every(({ what, holds }) => holds || what !== 'flag'),
  readGround: new Uint8Array(),
});
const told = (
  whatIfs: readonly WhatIf[],
  stage: 'coarse' | 'firm' = 'firm',
  chosenId = 'putt',
): ReturnType<typeof holdsFor> =>
  // Of a plan nothing but its choice is looked at.
  holdsFor({ plan: { chosenId } as Plan, stage, switchPoints: found(whatIfs) });

it('says of a firm advice what it holds for, or each kind of thing that changes it once', () => {
  const steady = [whatIf('flag', true), whatIf('wind', true), whatIf('level', false)];
  expect(told(steady)).toEqual({ kind: 'holds', words: 'every flag and any usual day' });
  const other = [
    whatIf('flag', false),
    whatIf('flag', false),
    whatIf('stimp', false),
    whatIf('level', false),
  ];
  expect(told(other)).toEqual({ kind: 'changes', words: 'the flag and green speed' });
  expect(told(steady, 'coarse')).toBeNull();
  expect(told(steady, 'firm', 'chip')).toBeNull();
});
