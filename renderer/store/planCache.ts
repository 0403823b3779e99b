import { fingerprint } from '../../shared/planner/fingerprint.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';

export type Pair = Pick<Plan, 'ballId' | 'flagId'>;

/** Firm plans by what they depend on: the ground, the day, the player, and the places of their own ball and flag. */
export class PlanCache {
  readonly #plans = new Map<string, Plan>();
  readonly #most: number;

  constructor(most = 400) {
    this.#most = most;
  }

  get(scene: Scene, pair: Pair): Plan | undefined {
    return this.#plans.get(placeKey(scene, pair));
  }

  keep(scene: Scene, pair: Pair, plan: Plan): void {
    this.#plans.set(placeKey(scene, pair), plan);
    const [oldest] = this.#plans.keys();
    if (this.#plans.size > this.#most && oldest !== undefined) this.#plans.delete(oldest);
  }
}

const days = new WeakMap<Scene, string>();

/** Names everything a plan of this ball to this flag depends on; what things are called is not of it. */
export function placeKey(scene: Scene, { ballId, flagId }: Pair): string {
  let day = days.get(scene);
  if (day === undefined) {
    day = `${scene.groundKey} ${scene.hole.id} ${fingerprint([scene.conditions, scene.player])}`;
    days.set(scene, day);
  }
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  const { at, lie, coverOverride, moistureOverride } = ball?.record ?? {};
  return `${day} ${ballId} ${flagId} ${fingerprint([at, lie, coverOverride, moistureOverride, flag?.at])}`;
}
