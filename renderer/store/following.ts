import type { HeldPlace } from '../../shared/planner/movedScene.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import type { PlanQuestion } from '../../shared/protocol/planning.ts';
import type { AnswerListener, PlanningClient } from '../workers/planningClient.ts';

/** Shots for each option of a rough answer. */
const ROUGH_SHOTS = 48;
/** Options this close to the best stay in the running from one answer to the next, and at most so many. */
const NEAR_STROKES = 0.2;
const MOST = 5;

/**
 * Rough answers that follow a ball or flag under the hand: only what was in the running in the last answer is worked out
 * again, with one other option in turn to see whether it has come in. An answer under way is let finish and of those that
 * wait only the newest is kept, so that one answer follows the other as fast as they come.
 */
export class Following {
  readonly #client: PlanningClient;
  #scout = 0;

  constructor(client: PlanningClient) {
    this.#client = client;
  }

  follow(
    question: PlanQuestion,
    held: HeldPlace,
    last: Plan | null,
    listener: Pick<AnswerListener<'plan'>, 'answer' | 'problem'>,
  ): void {
    this.#scout += 1;
    this.#client.ask(
      'plan',
      {
        ...question,
        held,
        shotsPerOption: ROUGH_SHOTS,
        effort: 'rough',
        map: held.id === question.flagId ? 'light' : 'atHand',
        scout: this.#scout,
        ...(last !== null && { among: inRunning(last).map(({ id }) => id) }),
      },
      {
        problem: listener.problem,
        answer: (plan) => listener.answer({ ...plan, options: inRunning(plan) }),
      },
    );
  }
}

/** The choice and the options near the best, cheapest first. */
function inRunning({ options, chosenId }: Plan): readonly PlanOption[] {
  const near = options.filter(({ id, costStrokes }) => id === chosenId || costStrokes <= NEAR_STROKES);
  const kept = new Set([chosenId, ...near.map(({ id }) => id)].slice(0, MOST));
  return near.filter(({ id }) => kept.has(id));
}
