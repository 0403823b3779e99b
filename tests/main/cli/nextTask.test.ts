import { expect, it } from 'vitest';
import { nextTask } from '../../../main/cli/nextTask.ts';
import type { PlanTask } from '../../../main/cli/planTask.ts';

const task = (holeId: string, flagId: string) => ({ holeId, flagId });

it('keeps a thread at its hole, sends an idle one where nobody is, and has both finish the last hole', () => {
  const waiting = [task('1', 'B'), task('1', 'C'), task('2', 'A'), task('2', 'B')];
  expect(nextTask(waiting, '2', new Set(['1']))).toBe(waiting[2]);
  expect(nextTask(waiting, null, new Set(['1']))).toBe(waiting[2]);
  expect(nextTask(waiting, '3', new Set(['1', '2']))).toBe(waiting[0]);
  expect(nextTask<PlanTask>([], '1', new Set())).toBe(undefined);
});
