import type { HeldPlace } from '../../shared/planner/movedScene.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { PlanQuestion } from '../../shared/protocol/planning.ts';
import type { AnswerListener, PlanningClient } from '../workers/planningClient.ts';

/** Shots for each option of a rough answer. */
const ROUGH_SHOTS = 48;
/** Options this close to the best stay in the running from one answer to the next, and at most so many. */
const NEAR_STROKES = 0.2;
const MOST = 5;

/** Where a hand is followed to. */
interface Follower {
  /** Shows the thing held where it is, and the newest rough answer where there is a new one. */
  readonly show: (rough: Plan | null) => void;
  readonly problem: AnswerListener<'plan'>['problem'];
}

/** A place of the hand that has not been asked of. */
interface Wanted {
  readonly held: HeldPlace;
  readonly question: PlanQuestion;
  /** The answer shown, which says what is in the running. */
  readonly last: Plan | null;
  readonly problem: Follower['problem'];
}

/**
 * Rough answers that follow a ball or flag under the hand: only what was in the running in the last answer is worked out
 * again, with one other option in turn to see whether it has come in. Once a frame the hand and the newest answer are
 * shown, together, since either costs the window a layout, and where the hand is then is asked of: what comes in between
 * nobody would see. An answer under way is let finish and shown, though the hand has moved on, and of those that wait only
 * the newest is kept, so that one answer follows the other as fast as they come.
 */
export class Following {
  readonly #client: PlanningClient;
  readonly #nextFrame: (run: () => void) => void;
  #scout = 0;
  /** The newest answer that is not shown yet. */
  #rough: Plan | null = null;
  #wanted: Wanted | null = null;
  #show: Follower['show'] | null = null;
  /** What is held and of what plan; another answer than to that is none. */
  #of = '';
  #frameAsked = false;

  constructor(client: PlanningClient, nextFrame: (run: () => void) => void) {
    this.#client = client;
    this.#nextFrame = nextFrame;
  }

  /** @param question null where what is held is not of the plan shown */
  follow(
    held: HeldPlace,
    question: PlanQuestion | null,
    last: Plan | null,
    { show, problem }: Follower,
  ): void {
    this.#show = show;
    this.#askFrame();
    const of = [held.id, question?.holeId, question?.ballId, question?.flagId].join(' ');
    if (of !== this.#of) this.#rough = null;
    this.#of = of;
    this.#wanted = question === null ? null : { held, question, last, problem };
  }

  letGo(): void {
    this.#show = null;
    this.#rough = null;
    this.#wanted = null;
    this.#of = '';
  }

  #ask({ held, question, last, problem }: Wanted): void {
    const of = this.#of;
    this.#scout += 1;
    const among = this.#rough ?? last;
    this.#client.ask(
      'plan',
      {
        ...question,
        held,
        shotsPerOption: ROUGH_SHOTS,
        effort: 'rough',
        map: held.id === question.flagId ? 'light' : 'atHand',
        scout: this.#scout,
        ...(among !== null && { among: inRunning(among).map(({ id }) => id) }),
      },
      {
        follows: true,
        problem: (trouble) => {
          if (this.#of === of) problem(trouble);
        },
        answer: (plan) => {
          if (this.#of !== of) return;
          this.#rough = { ...plan, options: inRunning(plan) };
          this.#askFrame();
        },
      },
    );
  }

  #askFrame(): void {
    if (this.#frameAsked) return;
    this.#frameAsked = true;
    this.#nextFrame(() => {
      this.#frameAsked = false;
      const wanted = this.#wanted;
      this.#wanted = null;
      // Before the window draws, so that the worker is not idle meanwhile.
      if (wanted !== null) this.#ask(wanted);
      const rough = this.#rough;
      this.#rough = null;
      this.#show?.(rough);
    });
  }
}

/** The choice and the options near the best, cheapest first. */
function inRunning({ options, chosenId }: Plan): readonly PlanOption[] {
  const near = options.filter(({ id, costStrokes }) => id === chosenId || costStrokes <= NEAR_STROKES);
  const kept = new Set([chosenId, ...near.map(({ id }) => id)].slice(0, MOST));
  return near.filter(({ id }) => kept.has(id));
}
