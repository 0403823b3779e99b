import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import type { PlainProblem } from './plainProblem.ts';
import type { Sent } from './planningChannel.ts';
import type { Heard, PlanningThread } from './planningThread.ts';
import type { Rank, Turns } from './turns.ts';

export interface AnswerListener<K extends PlanningCall> {
  readonly progress?: (fraction: number) => void;
  /** A first answer, where there is one before the firm one. */
  readonly early?: (answer: PlanningCalls[K][1]) => void;
  readonly answer: (answer: PlanningCalls[K][1]) => void;
  readonly problem: (problem: PlainProblem) => void;
}

interface Asked {
  readonly document: AtlasDocument;
  readonly call: PlanningCall;
  readonly question: Sent<PlanningCall>;
  readonly rank: Rank;
  readonly progress: (fraction: number) => void;
  readonly early: ((answer: PlanningCalls[PlanningCall][1]) => void) | null;
  readonly answer: (answer: PlanningCalls[PlanningCall][1]) => void;
  readonly problem: (problem: PlainProblem) => void;
}

/**
 * Asks a planning thread, one question at a time; of those that wait only the newest is kept, and an answer nobody wants
 * any more is dropped here, so the window never shows a plan for ground that has changed.
 */
export class PlanningClient {
  readonly #thread: PlanningThread;
  readonly #dropsOld: boolean;
  readonly #turns: Turns;
  readonly #worked = { hold: () => this.#hold(true), goOn: () => this.#hold(false) };
  #running: Asked | null = null;
  /** Of the question that runs; 0 until it is sent. */
  #ticket = 0;
  #held = false;
  #waiting: Asked | null = null;
  #wanted: Asked | null = null;

  /**
   * @param dropsOld stop an answer that nobody wants any more, rather than let it finish. Questions that follow a
   * moving hand come faster than answers: there the old ones must finish, or none ever would.
   * @param turns shared with the other clients of the window, so that what nobody waits for gives way
   */
  constructor(thread: PlanningThread, dropsOld: boolean, turns: Turns) {
    this.#thread = thread;
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
    const asked: Asked = {
      document,
      call,
      question,
      rank,
      progress: listener.progress ?? (() => undefined),
      early: listener.early ?? null,
      answer: listener.answer,
      problem: listener.problem,
    };
    this.#wanted = asked;
    if (this.#running === null) this.#send(asked);
    else {
      this.#waiting = asked;
      if (this.#dropsOld || this.#running.rank !== 'asked') this.#drop();
    }
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#wanted = null;
    this.#waiting = null;
    this.#drop();
  }

  #drop(): void {
    if (this.#running !== null) this.#thread.tell('drop', this.#ticket);
  }

  #hold(held: boolean): void {
    this.#held = held;
    if (this.#ticket !== 0) this.#thread.tell(held ? 'hold' : 'goOn', this.#ticket);
  }

  #send(asked: Asked): void {
    const { document, call, question, rank } = asked;
    const early = asked.early !== null;
    this.#running = asked;
    this.#held = false;
    this.#turns.begin(this.#worked, rank);
    this.#ticket = this.#thread.ask(document, { call, question, held: this.#held, early }, (said) =>
      this.#hear(asked, said),
    );
  }

  #hear(asked: Asked, said: Heard): void {
    const wanted = asked === this.#wanted;
    if (said.kind === 'progress') {
      if (wanted) asked.progress(said.fraction);
      return;
    }
    if (said.kind === 'early') {
      if (wanted) asked.early?.(said.answer);
      return;
    }
    this.#next();
    if (!wanted) return;
    if (said.kind === 'answer') asked.answer(said.answer);
    else if (said.kind === 'problem') asked.problem(said.problem);
    else if (said.kind === 'stopped') asked.problem(stopped(said.message));
  }

  #next(): void {
    const waiting = this.#waiting;
    this.#running = null;
    this.#ticket = 0;
    this.#waiting = null;
    this.#turns.end(this.#worked);
    if (waiting !== null) this.#send(waiting);
  }
}

const stopped = (message: string): PlainProblem => ({
  code: 'planner-stopped',
  message: `The planner stopped: ${message}`,
  place: '',
  remedy: 'Choose the ball again; if it stops again, save the atlas and reload.',
});
