import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { keepFit } from '../../shared/planner/answer.ts';
import { hermiteGridOf } from '../../shared/terrain/hermiteGrid.ts';
import type { PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import { answers } from './answers.ts';
import type { Ask, FromWorker, Told, ToWorker } from './planningChannel.ts';
import { type PlainProblem, plainProblem } from './plainProblem.ts';

/** What of a worker's own scope is used here: the DOM library describes a window's instead. */
interface WorkerScope {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
}
const scope = globalThis as unknown as WorkerScope;

const empty: AtlasDocument = { records: new Map() };
let document = empty;

const problemOf = (error: unknown): PlainProblem =>
  plainProblem(error, (what) => ({
    code: 'planner-failed',
    message: `The planner failed: ${what}`,
    place: '',
    remedy: 'Move the ball a little or choose another; the atlas itself is safe.',
  }));

/** Lets messages, and other answers, in between two steps of an answer; a timer would wait longer than many steps take. */
const pauses = new MessageChannel();
const paused: (() => void)[] = [];
pauses.port1.onmessage = () => paused.shift()?.();
function pause(): Promise<void> {
  return new Promise((resolve) => {
    paused.push(resolve);
    pauses.port2.postMessage(null);
  });
}

/** An answer under way: whether it is wanted, whether other work comes first, and what wakes it when it waits for that. */
interface UnderWay {
  wanted: boolean;
  held: boolean;
  wake: () => void;
}
const underWay = new Map<number, UnderWay>();

/** The window redraws for each share it is told. */
const TELL_EVERY_MS = 100;

/** A call and its question belong together by the type of `Ask`; picking by name loses that. */
function stepsOf({ call, question, ticket, early }: Ask): Generator<number, PlanningCalls[PlanningCall][1]> {
  const answer = answers[call] as (
    from: AtlasDocument,
    asked: Ask['question'],
    early?: (answer: PlanningCalls[PlanningCall][1]) => void,
  ) => Generator<number, PlanningCalls[PlanningCall][1]>;
  const tell = (first: PlanningCalls[PlanningCall][1]): void =>
    scope.postMessage({ kind: 'early', ticket, answer: first });
  return answer(document, question, early ? tell : undefined);
}

/** Waits while other work comes first. False where the question has been dropped. */
async function mayGoOn(own: UnderWay): Promise<boolean> {
  while (own.held && own.wanted) await new Promise<void>((resolve) => (own.wake = resolve));
  return own.wanted;
}

async function answerTo(ask: Ask): Promise<void> {
  const { ticket, held } = ask;
  const own: UnderWay = { wanted: true, held, wake: () => undefined };
  underWay.set(ticket, own);
  try {
    const steps = stepsOf(ask);
    let told = performance.now();
    while (await mayGoOn(own)) {
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
  } finally {
    underWay.delete(ticket);
  }
}

function tell({ kind, ticket }: Told): void {
  const own = underWay.get(ticket);
  if (own === undefined) return;
  if (kind === 'drop') own.wanted = false;
  else own.held = kind === 'hold';
  own.wake();
}

scope.onmessage = ({ data }) => {
  switch (data.kind) {
    case 'document':
      document = applyChanges(data.fresh ? empty : document, data.changes);
      return;
    case 'ground':
      keepFit(data.fit.surfaceKey, hermiteGridOf(data.fit.shape, data.fit.nodes));
      return;
    case 'ask':
      void answerTo(data);
      return;
    default:
      tell(data);
  }
};
