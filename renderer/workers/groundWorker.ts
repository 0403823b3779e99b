import type { GroundAnswer, GroundAsk } from './groundClient.ts';
import { plainProblem } from './plainProblem.ts';
import { readGround } from './readGround.ts';

/** What of a worker's own scope is used here: the DOM library describes a window's instead. */
interface WorkerScope {
  postMessage(message: GroundAnswer, transfer?: Transferable[]): void;
  onmessage: ((event: MessageEvent<GroundAsk>) => void) | null;
}
const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data: { ticket, question } }) => {
  try {
    const ground = readGround(question);
    scope.postMessage({ ticket, ground, problem: null }, [
      ground.heightsM.buffer,
      ground.riseEast.buffer,
      ground.riseNorth.buffer,
    ]);
  } catch (error) {
    const problem = plainProblem(error, (what) => ({
      code: 'ground-failed',
      message: `The ground could not be worked out: ${what}`,
      place: '',
      remedy: 'Undo the last reading; the drawing itself is safe.',
    }));
    scope.postMessage({ ticket, ground: null, problem });
  }
};
