import { fingerprint } from '../../shared/planner/fingerprint.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { Grounds } from './grounds.ts';
import { KeptOnGround } from './keptOnGround.ts';

export type Pair = Pick<Plan, 'ballId' | 'flagId'>;

/**
 * Firm plans by what they depend on: the ground they looked at, the day, the player, and the places of their own ball and
 * flag.
 */
export class PlanCache {
  readonly grounds = new Grounds();
  readonly #plans: KeptOnGround<Plan>;

  constructor(most = 400) {
    this.#plans = new KeptOnGround(this.grounds, most);
  }

  get(scene: Scene, pair: Pair): Plan | undefined {
    return this.#plans.get(scene.groundKey, placeKey(scene, pair));
  }

  keep(scene: Scene, pair: Pair, plan: Plan): void {
    this.#plans.keep(scene.groundKey, placeKey(scene, pair), plan);
  }
}

const days = new WeakMap<Scene, string>();

/** Names everything but the ground that a plan of this ball to this flag depends on; what things are called is not of it. */
export function placeKey(scene: Scene, { ballId, flagId }: Pair): string {
  let day = days.get(scene);
  if (day === undefined) {
    day = `${scene.hole.id} ${fingerprint([scene.conditions, scene.player])}`;
    days.set(scene, day);
  }
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  const { at, lie, coverOverride, moistureOverride } = ball?.record ?? {};
  return `${day} ${ballId} ${flagId} ${fingerprint([at, lie, coverOverride, moistureOverride, flag?.at])}`;
}
