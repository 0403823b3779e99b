import { fingerprint } from '../../shared/planner/fingerprint.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { SwitchPoints } from '../../shared/planner/switchPoints.ts';
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
  readonly #switchPoints: KeptOnGround<SwitchPoints>;

  constructor(most = 400) {
    this.#plans = new KeptOnGround(this.grounds, most);
    this.#switchPoints = new KeptOnGround(this.grounds, most);
  }

  get(scene: Scene, pair: Pair): Plan | undefined {
    return this.#plans.get(scene.groundKey, placeKey(scene, pair));
  }

  keep(scene: Scene, pair: Pair, plan: Plan): void {
    this.#plans.keep(scene.groundKey, placeKey(scene, pair), plan);
  }

  switchPoints(scene: Scene, pair: Pair): SwitchPoints | undefined {
    return this.#switchPoints.get(scene.groundKey, allFlagsKey(scene, pair));
  }

  keepSwitchPoints(scene: Scene, pair: Pair, found: SwitchPoints): void {
    this.#switchPoints.keep(scene.groundKey, allFlagsKey(scene, pair), found);
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

/** What would change a choice depends on every flag of the hole. */
const allFlagsKey = (scene: Scene, pair: Pair): string =>
  `${placeKey(scene, pair)} ${scene.flags.map(({ record }) => record.id + record.at.join(' ')).join(' ')}`;
