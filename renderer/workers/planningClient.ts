import { documentChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { PlanQuestion } from '../../shared/protocol/planning.ts';
import type { FromWorker, PlanningProblem, ToWorker } from './planningChannel.ts';

export interface PlanListener {
  readonly progress: (fraction: number) => void;
  readonly plan: (plan: Plan) => void;
  readonly problem: (problem: PlanningProblem) => void;
}

interface Asked {
  readonly ticket: number;
  readonly question: PlanQuestion;
  readonly listener: PlanListener;
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
  #worker: WorkerPort | null = null;
  #sent: AtlasDocument = empty;
  #running: Asked | null = null;
  #waiting: Asked | null = null;
  #wanted = 0;
  #lastTicket = 0;

  /**
   * @param dropsOld stop an answer that nobody wants any more, rather than let it finish. Questions that follow a
   * moving hand come faster than answers: there the old ones must finish, or none ever would.
   */
  constructor(start: () => WorkerPort, dropsOld: boolean) {
    this.#start = start;
    this.#dropsOld = dropsOld;
  }

  /** Asks, giving up whatever was asked before. */
  ask(question: PlanQuestion, listener: PlanListener): void {
    this.#lastTicket += 1;
    this.#wanted = this.#lastTicket;
    const asked = { ticket: this.#lastTicket, question, listener };
    if (this.#running === null) this.#send(asked);
    else {
      this.#waiting = asked;
      if (this.#dropsOld) this.#drop();
    }
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#wanted = 0;
    this.#waiting = null;
    this.#drop();
  }

  #drop(): void {
    if (this.#running !== null) this.#worker?.postMessage({ kind: 'drop', ticket: this.#running.ticket });
  }

  #send(asked: Asked): void {
    const worker = this.#workerNow();
    this.#running = asked;
    const { document, holeId, ballId, flagId, shotsPerOption, seed } = asked.question;
    if (document !== this.#sent) {
      const fresh = this.#sent === empty;
      worker.postMessage({ kind: 'document', fresh, changes: documentChanges(this.#sent, document) });
      this.#sent = document;
    }
    worker.postMessage({ kind: 'ask', ticket: asked.ticket, holeId, ballId, flagId, shotsPerOption, seed });
  }

  #workerNow(): WorkerPort {
    if (this.#worker !== null) return this.#worker;
    const worker = this.#start();
    worker.onmessage = ({ data }) => this.#receive(data);
    worker.onerror = (event) => {
      const asked = this.#running;
      this.#restart();
      if (asked?.ticket === this.#wanted) {
        asked.listener.problem({
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
    if (asked?.ticket !== message.ticket) return;
    const wanted = message.ticket === this.#wanted;
    if (message.kind === 'progress') {
      if (wanted) asked.listener.progress(message.fraction);
      return;
    }
    this.#next();
    if (!wanted) return;
    if (message.kind === 'plan') asked.listener.plan(message.plan);
    else if (message.kind === 'problem') asked.listener.problem(message.problem);
  }

  #next(): void {
    const waiting = this.#waiting;
    this.#running = null;
    this.#waiting = null;
    if (waiting !== null) this.#send(waiting);
  }
}
