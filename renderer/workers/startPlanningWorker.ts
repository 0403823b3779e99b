import type { WorkerPort } from './planningThread.ts';

export function startPlanningWorker(): WorkerPort {
  return new Worker(new URL('./planningWorker.ts', import.meta.url), { type: 'module', name: 'planning' });
}
