import type { PlanTask } from './planTask.ts';

/**
 * What a thread does next of what waits: another flag of the hole whose ground it has, else a hole that no other thread is
 * at, so that no ground is fitted twice unless threads would be idle.
 * @param mine the hole the thread is at, null for none yet
 */
export function nextTask<T extends Pick<PlanTask, 'holeId'>>(
  waiting: readonly T[],
  mine: string | null,
  others: ReadonlySet<string>,
): T | undefined {
  return (
    waiting.find(({ holeId }) => holeId === mine) ??
    waiting.find(({ holeId }) => !others.has(holeId)) ??
    waiting[0]
  );
}
