import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { posted } from '../../shared/atlas/recordMap.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { nextTask } from './nextTask.ts';
import type { PlanMessage, PlanRun, PlanTask, ProblemParts } from './planTask.ts';

/** Built, the worker lies beside the command; from source it needs a loader first. */
const workerUrl = new URL(
  import.meta.url.endsWith('.ts') ? './planWorkerFromSource.mjs' : './planWorker.js',
  import.meta.url,
);
const MOST_WORKERS = 4;

/**
 * Plans all tasks on as many threads as there are cores, at most four. Plans come in the order of the tasks and of the
 * balls in each, whoever made them. A ball that cannot be planned is missing among them, and `unplanned` is told why; throws
 * the first InputProblem met where nothing can be planned.
 */
export async function planAll(
  run: PlanRun,
  tasks: readonly PlanTask[],
  onPlan: () => void,
  unplanned: (why: InputProblem) => void,
): Promise<readonly Plan[]> {
  const plans = tasks.map((): Plan[] => []);
  const problems: InputProblem[] = [];
  let waiting = tasks.map((task, index) => ({ ...task, index }));
  const workers: Worker[] = [];
  const holeOf = new Map<Worker, string>();
  const workUntilDone = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      let current = -1;
      const next = (): void => {
        const mine = holeOf.get(worker) ?? null;
        holeOf.delete(worker);
        const task = nextTask(waiting, mine, new Set(holeOf.values()));
        if (task === undefined) {
          resolve();
          return;
        }
        waiting = waiting.filter((one) => one !== task);
        holeOf.set(worker, task.holeId);
        current = task.index;
        worker.postMessage(tasks[current]);
      };
      worker.on('error', reject);
      worker.on('message', (message: PlanMessage) => {
        if (message.kind === 'problem') {
          reject(inputProblem(message.problem));
          return;
        }
        if (message.kind === 'done') {
          next();
          return;
        }
        if (message.kind === 'unplanned') problems.push(inputProblem(message.problem));
        else plans[current]?.push(message.plan);
        onPlan();
      });
      next();
    });
  try {
    for (let n = Math.min(availableParallelism(), MOST_WORKERS, tasks.length); n > 0; n -= 1)
      workers.push(new Worker(workerUrl, { workerData: { ...run, document: posted(run.document) } }));
    await Promise.all(workers.map(workUntilDone));
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  const [first] = problems;
  if (first !== undefined && plans.every((made) => made.length === 0)) throw first;
  for (const problem of problems) unplanned(problem);
  return plans.flat();
}

function inputProblem({ code, message, place, remedy }: ProblemParts): InputProblem {
  const what = message.slice(place === '' ? 0 : place.length + 2, message.length - remedy.length - 1);
  return new InputProblem(code, what, place, remedy);
}
