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
  /**
   * Questions that follow a moving hand: the answer to one is heard even if the next has been asked by then, as there
   * always is a next one until the hand rests.
   */
  readonly follows?: boolean;
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

/** A question that has been sent and has not ended. */
interface Open {
  readonly asked: Asked;
  ticket: number;
  /** Heard though a newer one has been asked. */
  follows: boolean;
  /** It waits behind another. */
  behind: boolean;
  /** A newer one has been asked, and the worker told so. */
  passed: boolean;
  /** It has been given up, and the worker told so. */
  dropped: boolean;
}

/**
 * Asks a planning thread, one question at a time; of those that wait only the newest is kept, and an answer nobody wants
 * any more is dropped here, so the window never shows a plan for ground that has changed. A question that has to wait waits
 * in the worker: this window is often busy drawing just when the one before it ends.
 */
export class PlanningClient {
  readonly #thread: PlanningThread;
  readonly #dropsOld: boolean;
  readonly #turns: Turns;
  readonly #worked = { hold: () => this.#hold(true), goOn: () => this.#hold(false) };
  /** In the order they were sent; all but the first wait. */
  #open: readonly Open[] = [];
  #held = false;
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
    const follows = listener.follows ?? false;
    for (const old of this.#open) {
      old.follows &&= follows;
      if (!this.#dropsOld && old.asked.rank === 'asked' && rank === 'asked') this.#pass(old);
      else this.#drop(old);
    }
    this.#send(asked, follows);
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#wanted = null;
    for (const old of this.#open) {
      old.follows = false;
      this.#drop(old);
    }
  }

  #pass(open: Open): void {
    if (!open.passed) this.#thread.tell('pass', open.ticket);
    open.passed = true;
  }

  #drop(open: Open): void {
    if (!open.dropped) this.#thread.tell('drop', open.ticket);
    open.dropped = true;
  }

  #hold(held: boolean): void {
    this.#held = held;
    for (const { ticket } of this.#open) this.#thread.tell(held ? 'hold' : 'goOn', ticket);
  }

  #send(asked: Asked, follows: boolean): void {
    const { document, call, question, rank } = asked;
    const last = this.#open.at(-1);
    if (last === undefined) this.#held = false;
    this.#turns.begin(this.#worked, rank);
    const open: Open = {
      asked,
      ticket: 0,
      follows,
      behind: last !== undefined,
      passed: false,
      dropped: false,
    };
    open.ticket = this.#thread.ask(
      document,
      { call, question, after: last?.ticket ?? null, held: this.#held, early: asked.early !== null },
      (said) => this.#hear(open, said),
    );
    this.#open = [...this.#open, open];
  }

  #hear(open: Open, said: Heard): void {
    const { asked } = open;
    const wanted = asked === this.#wanted;
    if (said.kind === 'progress') {
      if (wanted) asked.progress(said.fraction);
      return;
    }
    if (said.kind === 'early') {
      if (wanted) asked.early?.(said.answer);
      return;
    }
    this.#open = this.#open.filter((one) => one !== open);
    const [next] = this.#open;
    if (next !== undefined && said.kind !== 'stopped') next.behind = false;
    if (this.#open.length === 0) this.#turns.end(this.#worked);
    if (said.kind === 'answer') {
      if (wanted || open.follows) asked.answer(said.answer);
      return;
    }
    if (!wanted) return;
    if (said.kind === 'problem') asked.problem(said.problem);
    else if (said.kind === 'stopped') {
      // What stopped the worker is the answer before this one, that had not begun.
      if (open.behind) this.#send(asked, open.follows);
      else asked.problem(stopped(said.message));
    }
  }
}

const stopped = (message: string): PlainProblem => ({
  code: 'planner-stopped',
  message: `The planner stopped: ${message}`,
  place: '',
  remedy: 'Choose the ball again; if it stops again, save the atlas and reload.',
});
