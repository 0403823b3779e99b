import { parentPort, workerData } from 'node:worker_threads';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { PlanMessage, PlanRun, PlanTask, ProblemParts } from './planTask.ts';

const port = parentPort;
if (port === null) throw new Error('planWorker.ts runs as a worker thread only');
const { document, shotsPerOption, seed } = workerData as PlanRun; // as planPool.ts gives it
const say = (message: PlanMessage): void => port.postMessage(message);

let scene: Scene | null = null;

port.on('message', ({ holeId, flagId, ballIds }: PlanTask) => {
  try {
    if (scene?.hole.id !== holeId) scene = buildScene(document, holeId);
  } catch (error) {
    say({ kind: 'problem', problem: partsOf(error) });
    return;
  }
  for (const ballId of ballIds) {
    try {
      say({ kind: 'plan', plan: planBall(scene, { ballId, flagId, shotsPerOption, seed }) });
    } catch (error) {
      say({ kind: 'unplanned', problem: partsOf(error) });
    }
  }
  say({ kind: 'done' });
});

/** Throws anything that is not an InputProblem on. */
function partsOf(error: unknown): ProblemParts {
  if (!(error instanceof InputProblem)) throw error;
  const { code, message, place, remedy } = error;
  return { code, message, place, remedy };
}
