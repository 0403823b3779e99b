import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { KnownHold } from '../../shared/playbook/holdsOf.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { type PagesQuestion, USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { PlanningClient } from '../workers/planningClient.ts';
import type { PlanningThread } from '../workers/planningThread.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';
import type { Turns } from '../workers/turns.ts';
import type { Pair, PlanCache } from './planCache.ts';

export interface BookListener {
  /** Share of the plans made. */
  readonly progress: (share: number) => void;
  /** All plans of the hole that can be made; a ball that cannot be planned is missing. */
  readonly done: (plans: readonly Plan[]) => void;
}

/** Plans every ball of a hole to every flag, on the processor's cores, from the cache where it has them. */
export class BookPlanning {
  readonly #clients: readonly PlanningClient[];
  readonly #pages: PlanningClient;
  readonly #plans: PlanCache;
  #run = 0;

  constructor(threads: readonly PlanningThread[], pages: PlanningThread, plans: PlanCache, turns: Turns) {
    this.#clients = threads.map((thread) => new PlanningClient(thread, true, turns));
    this.#pages = new PlanningClient(pages, true, turns);
    this.#plans = plans;
  }

  /** Gives up an earlier hole. Calls `done` once, unless another hole or `cancel` comes first. */
  plan(document: AtlasDocument, scene: Scene, listener: BookListener): void {
    this.cancel();
    const run = this.#run;
    const pairs = pairsOf(scene);
    const waiting = pairs.filter((pair) => this.#plans.get(scene, pair) === undefined);
    const asked = waiting.length;
    let answered = 0;
    const finish = (): void => {
      listener.done(pairs.flatMap((pair) => this.#plans.get(scene, pair) ?? []));
    };
    const next = (client: PlanningClient): void => {
      const pair = waiting.shift();
      if (pair === undefined) return;
      const settle = (plan: Plan | null): void => {
        if (run !== this.#run) return;
        if (plan !== null) this.#plans.keep(scene, pair, plan);
        answered += 1;
        listener.progress(answered / asked);
        if (answered === asked) finish();
        else next(client);
      };
      client.ask(
        'plan',
        { document, holeId: scene.hole.id, ...pair, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED },
        { answer: settle, problem: () => settle(null) },
      );
    };
    if (asked === 0) finish();
    else for (const client of this.#clients) next(client);
  }

  /** What has been worked out of how far the choices of a hole hold: for the balls and flags that were looked at. */
  holds(scene: Scene): readonly KnownHold[] {
    return pairsOf(scene).flatMap((pair) => {
      const found = this.#plans.switchPoints(scene, pair);
      return found === undefined ? [] : [{ ...pair, ...found }];
    });
  }

  /** The pages of a hole as one file. Only the newest asked for is answered. */
  pages(
    question: PagesQuestion,
    listener: {
      readonly progress: (share: number) => void;
      readonly answer: (html: string) => void;
      readonly problem: (words: TroubleWords) => void;
    },
  ): void {
    this.#pages.ask('pages', question, listener);
  }

  cancel(): void {
    this.#run += 1;
    for (const client of this.#clients) client.cancel();
    this.#pages.cancel();
  }
}

const pairsOf = ({ flags, balls }: Scene): readonly Pair[] =>
  flags.flatMap((flag) => balls.map((ball) => ({ ballId: ball.record.id, flagId: flag.record.id })));
