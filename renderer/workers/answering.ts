import type { PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import type { PlainProblem } from './plainProblem.ts';
import type { Ask, FromWorker, Told } from './planningChannel.ts';

type Answer = PlanningCalls[PlanningCall][1];

/** How a question is answered, in steps; `early` takes a first answer before the firm one. */
export type Begin = (early: ((answer: Answer) => void) | undefined) => Generator<number, Answer>;

interface AnsweringParts {
  readonly post: (message: FromWorker) => void;
  /** Lets messages, and other answers, in between two steps of an answer. */
  readonly pause: () => Promise<void>;
  readonly problemOf: (error: unknown) => PlainProblem;
}

/** An answer under way: whether it is wanted, whether other work comes first, and what wakes it when it waits for that. */
interface UnderWay {
  begun: boolean;
  wanted: boolean;
  held: boolean;
  wake: () => void;
  readonly ended: Promise<void>;
}

/** The window redraws for each share it is told. */
const TELL_EVERY_MS = 100;

/** Answers the questions of a worker, step by step and in turn, until they are given up. */
export class Answering {
  readonly #parts: AnsweringParts;
  readonly #underWay = new Map<number, UnderWay>();

  constructor(parts: AnsweringParts) {
    this.#parts = parts;
  }

  ask(ask: Omit<Ask, 'call' | 'question'>, begin: Begin): void {
    let end = (): void => undefined;
    const ended = new Promise<void>((resolve) => (end = resolve));
    const own: UnderWay = { begun: false, wanted: true, held: ask.held, wake: () => undefined, ended };
    const before = ask.after === null ? undefined : this.#underWay.get(ask.after);
    this.#underWay.set(ask.ticket, own);
    void this.#answer(ask, begin, own, before).finally(() => {
      this.#underWay.delete(ask.ticket);
      end();
    });
  }

  tell({ kind, ticket }: Told): void {
    const own = this.#underWay.get(ticket);
    if (own === undefined) return;
    if (kind === 'drop') own.wanted = false;
    else if (kind === 'pass') own.wanted &&= own.begun;
    else own.held = kind === 'hold';
    own.wake();
  }

  async #answer(
    { ticket, early }: Pick<Ask, 'ticket' | 'early'>,
    begin: Begin,
    own: UnderWay,
    before: UnderWay | undefined,
  ): Promise<void> {
    const { post, pause, problemOf } = this.#parts;
    if (before !== undefined) {
      await before.ended;
      // A newer question may have come meanwhile, and with it word that this one is passed over.
      await pause();
    }
    try {
      let steps: ReturnType<Begin> | null = null;
      let told = performance.now();
      while (await mayGoOn(own)) {
        own.begun = true;
        steps ??= begin(early ? (answer) => post({ kind: 'early', ticket, answer }) : undefined);
        const step = steps.next();
        if (step.done === true) {
          post({ kind: 'answer', ticket, answer: step.value });
          return;
        }
        if (performance.now() - told > TELL_EVERY_MS) {
          told = performance.now();
          post({ kind: 'progress', ticket, fraction: step.value });
        }
        await pause();
      }
      post({ kind: 'dropped', ticket });
    } catch (error) {
      post({ kind: 'problem', ticket, problem: problemOf(error) });
    }
  }
}

/** Waits while other work comes first. False where the question has been dropped. */
async function mayGoOn(own: UnderWay): Promise<boolean> {
  while (own.held && own.wanted) await new Promise<void>((resolve) => (own.wake = resolve));
  return own.wanted;
}
