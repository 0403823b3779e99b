import { documentChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import type { Ask, FromWorker, PlanningProblem, ToWorker } from './planningChannel.ts';
import type { Rank, Turns } from './turns.ts';

export interface AnswerListener<K extends PlanningCall> {
  readonly progress?: (fraction: number) => void;
  /** A first answer, where there is one before the firm one. */
  readonly early?: (answer: PlanningCalls[K][1]) => void;
  readonly answer: (answer: PlanningCalls[K][1]) => void;
  readonly problem: (problem: PlanningProblem) => void;
}

interface Asked {
  readonly document: AtlasDocument;
  readonly message: Ask;
  readonly rank: Rank;
  readonly progress: (fraction: number) => void;
  readonly early: (answer: PlanningCalls[PlanningCall][1]) => void;
  readonly answer: (answer: PlanningCalls[PlanningCall][1]) => void;
  readonly problem: (problem: PlanningProblem) => void;
}

/** What of `Worker` is used here; a test hands in its own. */
export interface WorkerPort {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

const empty: AtlasDocument = { records: new Map() };

/**
 * One planning worker and its questions. It answers one at a time; of those that wait only the newest is kept, and an
 * answer nobody wants any more is dropped here, so the window never shows a plan for ground that has changed.
 */
export class PlanningClient {
  readonly #start: () => WorkerPort;
  readonly #dropsOld: boolean;
  readonly #turns: Turns;
  readonly #worked = {
    hold: () => this.#worker?.postMessage({ kind: 'hold' }),
    goOn: () => this.#worker?.postMessage({ kind: 'goOn' }),
  };
  #worker: WorkerPort | null = null;
  #sent: AtlasDocument = empty;
  #running: Asked | null = null;
  #waiting: Asked | null = null;
  #wanted = 0;
  #lastTicket = 0;

  /**
   * @param dropsOld stop an answer that nobody wants any more, rather than let it finish. Questions that follow a
   * moving hand come faster than answers: there the old ones must finish, or none ever would.
   * @param turns shared with the other clients of the window, so that what nobody waits for gives way
   */
  constructor(start: () => WorkerPort, dropsOld: boolean, turns: Turns) {
    this.#start = start;
    this.#dropsOld = dropsOld;
    this.#turns = turns;
  }

  /**
   * Asks, giving up whatever was asked before.
   * @param rank what is not `asked` for is dropped for the next question even where old ones finish
   */
  ask<K extends PlanningCall>(
    call: K,
    { document, ...question }: PlanningCalls[K][0],
    listener: AnswerListener<K>,
    rank: Rank = 'asked',
  ): void {
    this.#lastTicket += 1;
    this.#wanted = this.#lastTicket;
    const asked: Asked = {
      document,
      // The name and the question are of one kind by the signature; the union cannot tell.
      message: { kind: 'ask', ticket: this.#lastTicket, call, question } as unknown as Ask,
      rank,
      progress: listener.progress ?? (() => undefined),
      early: listener.early ?? (() => undefined),
      answer: listener.answer,
      problem: listener.problem,
    };
    if (this.#running === null) this.#send(asked);
    else {
      this.#waiting = asked;
      if (this.#dropsOld || this.#running.rank !== 'asked') this.#drop();
    }
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#wanted = 0;
    this.#waiting = null;
    this.#drop();
  }

  #drop(): void {
    if (this.#running !== null)
      this.#worker?.postMessage({ kind: 'drop', ticket: this.#running.message.ticket });
  }

  #send(asked: Asked): void {
    const worker = this.#workerNow();
    this.#running = asked;
    this.#turns.begin(this.#worked, asked.rank);
    if (asked.document !== this.#sent) {
      const fresh = this.#sent === empty;
      worker.postMessage({ kind: 'document', fresh, changes: documentChanges(this.#sent, asked.document) });
      this.#sent = asked.document;
    }
    worker.postMessage(asked.message);
  }

  #workerNow(): WorkerPort {
    if (this.#worker !== null) return this.#worker;
    const worker = this.#start();
    worker.onmessage = ({ data }) => this.#receive(data);
    worker.onerror = (event) => {
      const asked = this.#running;
      this.#restart();
      if (asked?.message.ticket === this.#wanted) {
        asked.problem({
          code: 'planner-stopped',
          message: `The planner stopped: ${event.message}`,
          place: '',
          remedy: 'Choose the ball again; if it stops again, save the atlas and reload.',
        });
      }
    };
    this.#worker = worker;
    return worker;
  }

  #restart(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#sent = empty;
    this.#next();
  }

  #receive(message: FromWorker): void {
    const asked = this.#running;
    if (asked?.message.ticket !== message.ticket) return;
    const wanted = message.ticket === this.#wanted;
    if (message.kind === 'progress') {
      if (wanted) asked.progress(message.fraction);
      return;
    }
    if (message.kind === 'early') {
      if (wanted) asked.early(message.answer);
      return;
    }
    this.#next();
    if (!wanted) return;
    if (message.kind === 'answer') asked.answer(message.answer);
    else if (message.kind === 'problem') asked.problem(message.problem);
  }

  #next(): void {
    const waiting = this.#waiting;
    this.#turns.end(this.#worked);
    this.#running = null;
    this.#waiting = null;
    if (waiting !== null) this.#send(waiting);
  }
}
