import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { sceneFor } from '../../shared/planner/answer.ts';
import { planSteps } from '../../shared/planner/planBall.ts';
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

/** Lets messages in between two steps of an answer; a timer would wait longer than many steps take. */
const pauses = new MessageChannel();
function pause(): Promise<void> {
  return new Promise((resolve) => {
    pauses.port1.onmessage = () => resolve();
    pauses.port2.postMessage(null);
  });
}

/** The ticket being answered, 0 for none; a dropped question is given up at its next pause. */
let answering = 0;

async function answerTo(ask: Extract<ToWorker, { readonly kind: 'ask' }>): Promise<void> {
  const { ticket, holeId, ballId, flagId, shotsPerOption, seed } = ask;
  answering = ticket;
  try {
    const steps = planSteps(sceneFor({ document, holeId }), { ballId, flagId, shotsPerOption, seed });
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) {
        scope.postMessage({ kind: 'plan', ticket, plan: step.value });
        return;
      }
      scope.postMessage({ kind: 'progress', ticket, fraction: step.value });
      await pause();
      if (answering !== ticket) {
        scope.postMessage({ kind: 'dropped', ticket });
        return;
      }
    }
  } catch (error) {
    scope.postMessage({ kind: 'problem', ticket, problem: problemOf(error) });
  }
}

scope.onmessage = ({ data }) => {
  switch (data.kind) {
    case 'document':
      document = applyChanges(data.fresh ? empty : document, data.changes);
      return;
    case 'drop':
      if (answering === data.ticket) answering = 0;
      return;
    case 'ask':
      void answerTo(data);
  }
};
