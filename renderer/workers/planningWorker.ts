import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { FromWorker, PlanningProblem, ToWorker } from './planningChannel.ts';

/** What of a worker's own scope is used here: the DOM library describes a window's instead. */
interface WorkerScope {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
}
const scope = globalThis as unknown as WorkerScope;

const empty: AtlasDocument = { records: new Map() };
let document = empty;
/** The newest scene of each hole: its fitted ground serves again until the ground changes. */
const scenes = new Map<string, Scene>();

function problemOf(error: unknown): PlanningProblem {
  if (error instanceof InputProblem) {
    const { code, message, place, remedy } = error;
    return { code, message, place, remedy };
  }
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'planner-failed',
    message: `The planner failed: ${what}`,
    place: '',
    remedy: 'Move the ball a little or choose another; the atlas itself is safe.',
  };
}

scope.onmessage = ({ data }) => {
  if (data.kind === 'document') {
    document = applyChanges(data.fresh ? empty : document, data.changes);
    return;
  }
  const { ticket, holeId, ballId, flagId, shotsPerOption, seed } = data;
  try {
    const scene = buildScene(document, holeId, scenes.get(holeId));
    scenes.set(holeId, scene);
    const plan = planBall(scene, { ballId, flagId, shotsPerOption, seed }, (fraction) =>
      scope.postMessage({ kind: 'progress', ticket, fraction }),
    );
    scope.postMessage({ kind: 'plan', ticket, plan });
  } catch (error) {
    scope.postMessage({ kind: 'problem', ticket, problem: problemOf(error) });
  }
};
