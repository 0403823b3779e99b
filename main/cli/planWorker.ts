import { parentPort, workerData } from 'node:worker_threads';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { PlanMessage, PlanRun, PlanTask } from './planTask.ts';

const port = parentPort;
if (port === null) throw new Error('planWorker.ts runs as a worker thread only');
const { document, shotsPerOption, seed } = workerData as PlanRun; // as planPool.ts gives it
const say = (message: PlanMessage): void => port.postMessage(message);

let scene: Scene | null = null;

port.on('message', ({ holeId, flagId, ballIds }: PlanTask) => {
  try {
    if (scene?.hole.id !== holeId) scene = buildScene(document, holeId);
    for (const ballId of ballIds)
      say({ kind: 'plan', plan: planBall(scene, { ballId, flagId, shotsPerOption, seed }) });
    say({ kind: 'done' });
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    const { code, message, place, remedy } = error;
    say({ kind: 'problem', problem: { code, message, place, remedy } });
  }
});
