import { documentChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { GroundFit, PlanningCall } from '../../shared/protocol/planning.ts';
import type { Ask, FromWorker, Sent, Told, ToWorker } from './planningChannel.ts';

/** What of `Worker` is used here; a test hands in its own. */
export interface WorkerPort {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** What is heard of a question: what the worker says, or that it is there no more. */
export type Heard = FromWorker | { readonly kind: 'stopped'; readonly message: string };

/** A question without its document, and how it is to be answered (`Ask`). */
export interface Asked {
  readonly call: PlanningCall;
  readonly question: Sent<PlanningCall>;
  readonly after: number | null;
  readonly held: boolean;
  readonly early: boolean;
}

const empty: AtlasDocument = { records: new Map() };
const MOST_GROUNDS = 8;

/**
 * A planning worker, started when it is first asked, with its copy of the document. It may be asked by several at once and
 * takes their questions in turn, step by step: an engine that has warmed up for one answers the others sooner.
 */
export class PlanningThread {
  readonly #start: () => WorkerPort;
  readonly #hears = new Map<number, (said: Heard) => void>();
  #worker: WorkerPort | null = null;
  #sent: AtlasDocument = empty;
  #grounds: readonly GroundFit[] = [];
  #toldGrounds = new Set<GroundFit>();
  #lastTicket = 0;

  constructor(start: () => WorkerPort) {
    this.#start = start;
  }

  /** Asks; returns the ticket of the question. `hear` gets all that is said of it, ending with how it ended. */
  ask(document: AtlasDocument, asked: Asked, hear: (said: Heard) => void): number {
    const worker = this.#workerNow();
    if (document !== this.#sent) {
      const fresh = this.#sent === empty;
      worker.postMessage({ kind: 'document', fresh, changes: documentChanges(this.#sent, document) });
      this.#sent = document;
    }
    for (const fit of this.#grounds) {
      if (this.#toldGrounds.has(fit)) continue;
      this.#toldGrounds.add(fit);
      worker.postMessage({ kind: 'ground', fit });
    }
    this.#lastTicket += 1;
    const ticket = this.#lastTicket;
    this.#hears.set(ticket, hear);
    // That the question is of its call is seen to where it is asked; the union cannot tell.
    worker.postMessage({ kind: 'ask', ticket, ...asked } as Ask);
    return ticket;
  }

  /** Gives a question up, or has its answer wait at its next pause until it may go on. */
  tell(kind: Told['kind'], ticket: number): void {
    this.#worker?.postMessage({ kind, ticket });
  }

  /** Hands over ground fitted elsewhere, with the next question. */
  giveGround(fit: GroundFit): void {
    this.#grounds = [...this.#grounds.filter(({ surfaceKey }) => surfaceKey !== fit.surfaceKey), fit].slice(
      -MOST_GROUNDS,
    );
  }

  #workerNow(): WorkerPort {
    if (this.#worker !== null) return this.#worker;
    const worker = this.#start();
    worker.onmessage = ({ data }) => this.#receive(data);
    worker.onerror = ({ message }) => this.#stopped(message);
    this.#worker = worker;
    return worker;
  }

  #receive(said: FromWorker): void {
    const hear = this.#hears.get(said.ticket);
    if (said.kind !== 'progress' && said.kind !== 'early') this.#hears.delete(said.ticket);
    hear?.(said);
  }

  #stopped(message: string): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#sent = empty;
    this.#toldGrounds = new Set();
    const hears = [...this.#hears.values()];
    this.#hears.clear();
    for (const hear of hears) hear({ kind: 'stopped', message });
  }
}

/** The threads of a window. */
export interface PlanningThreads {
  /** The ground, and the plan of the ball and flag in hand. */
  readonly first: PlanningThread;
  /** Rough answers and tries, which never wait behind a thorough one. */
  readonly hand: PlanningThread;
  /** Long work: maps, other players, the doubt the survey leaves, pages. */
  readonly long: PlanningThread;
}
