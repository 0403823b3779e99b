import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { keepFit } from '../../shared/planner/answer.ts';
import { hermiteGridOf } from '../../shared/terrain/hermiteGrid.ts';
import { Answering, type Begin } from './answering.ts';
import { answers } from './answers.ts';
import type { Ask, FromWorker, ToWorker } from './planningChannel.ts';
import { plainProblem } from './plainProblem.ts';

/** What of a worker's own scope is used here: the DOM library describes a window's instead. */
interface WorkerScope {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
}
const scope = globalThis as unknown as WorkerScope;

const empty: AtlasDocument = { records: new Map() };
let document = empty;

/** Lets messages in between two steps; a timer would wait longer than many steps take. */
const pauses = new MessageChannel();
const paused: (() => void)[] = [];
pauses.port1.onmessage = () => paused.shift()?.();
function pause(): Promise<void> {
  return new Promise((resolve) => {
    paused.push(resolve);
    pauses.port2.postMessage(null);
  });
}

/**
 * How a question is answered, of the document as it is when it comes. A call and its question belong together by the type
 * of `Ask`; picking by name loses that.
 */
function beginOf({ call, question }: Ask, from: AtlasDocument): Begin {
  const answer = answers[call] as (
    from: AtlasDocument,
    asked: Ask['question'],
    ...early: Parameters<Begin>
  ) => ReturnType<Begin>;
  return (early) => answer(from, question, early);
}

const answering = new Answering({
  post: (message) => scope.postMessage(message),
  pause,
  problemOf: (error) =>
    plainProblem(error, (what) => ({
      code: 'planner-failed',
      message: `The planner failed: ${what}`,
      place: '',
      remedy: 'Move the ball a little or choose another; the atlas itself is safe.',
    })),
});

scope.onmessage = ({ data }) => {
  switch (data.kind) {
    case 'document':
      document = applyChanges(data.fresh ? empty : document, data.changes);
      return;
    case 'ground':
      keepFit(data.fit.surfaceKey, hermiteGridOf(data.fit.shape, data.fit.nodes));
      return;
    case 'ask':
      answering.ask(data, beginOf(data, document));
      return;
    default:
      answering.tell(data);
  }
};
