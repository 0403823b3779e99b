import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import { answers } from './answers.ts';
import type { Ask, FromWorker, PlanningProblem, ToWorker } from './planningChannel.ts';

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

/** Whether other work comes first, and what wakes an answer that waits for it. */
let held = false;
let wake = (): void => undefined;

/** The window redraws for each share it is told. */
const TELL_EVERY_MS = 100;

/** The ticket being answered, 0 for none; a dropped question is given up at its next pause. */
let answering = 0;

/** A call and its question belong together by the type of `Ask`; picking by name loses that. */
function stepsOf({ call, question, ticket }: Ask): Generator<number, PlanningCalls[PlanningCall][1]> {
  const answer = answers[call] as (
    from: AtlasDocument,
    asked: Ask['question'],
    early: (answer: PlanningCalls[PlanningCall][1]) => void,
  ) => Generator<number, PlanningCalls[PlanningCall][1]>;
  return answer(document, question, (first) => scope.postMessage({ kind: 'early', ticket, answer: first }));
}

/** Waits while other work comes first. False where the question has been dropped. */
async function mayGoOn(ticket: number): Promise<boolean> {
  while (held && answering === ticket) await new Promise<void>((resolve) => (wake = resolve));
  return answering === ticket;
}

async function answerTo(ask: Ask): Promise<void> {
  const { ticket } = ask;
  answering = ticket;
  try {
    const steps = stepsOf(ask);
    let told = performance.now();
    while (await mayGoOn(ticket)) {
      const step = steps.next();
      if (step.done === true) {
        scope.postMessage({ kind: 'answer', ticket, answer: step.value });
        return;
      }
      if (performance.now() - told > TELL_EVERY_MS) {
        told = performance.now();
        scope.postMessage({ kind: 'progress', ticket, fraction: step.value });
      }
      await pause();
    }
    scope.postMessage({ kind: 'dropped', ticket });
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
      wake();
      return;
    case 'hold':
      held = true;
      return;
    case 'goOn':
      held = false;
      wake();
      return;
    case 'ask':
      void answerTo(data);
  }
};
