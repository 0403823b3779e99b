import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';

export type Pair = Pick<Plan, 'ballId' | 'flagId'>;

/** Firm plans by what they depend on: a scene's key names the ground, the day, the player and every place. */
export class PlanCache {
  readonly #plans = new Map<string, Plan>();
  readonly #most: number;

  constructor(most = 400) {
    this.#most = most;
  }

  get(scene: Scene, pair: Pair): Plan | undefined {
    return this.#plans.get(keyOf(scene, pair));
  }

  keep(scene: Scene, pair: Pair, plan: Plan): void {
    this.#plans.set(keyOf(scene, pair), plan);
    const [oldest] = this.#plans.keys();
    if (this.#plans.size > this.#most && oldest !== undefined) this.#plans.delete(oldest);
  }
}

const keyOf = (scene: Scene, { ballId, flagId }: Pair): string => `${scene.key} ${ballId} ${flagId}`;
