import type { PlayerRecord } from '../atlas/records.ts';
import type { PlanOption } from './plan.ts';
import { planSteps } from './planBall.ts';
import type { Scene } from './scene.ts';

/** What one player should do from a ball. */
export interface PlayerAdvice {
  /** PlayerRecord.id */
  readonly playerId: string;
  readonly option: PlanOption;
  /** Shots in the player's hands that were weighed. */
  readonly weighed: number;
}

export interface PlayersRequest {
  readonly ballId: string;
  readonly flagId: string;
  readonly shotsPerOption: number;
  readonly seed: number;
  readonly players: readonly PlayerRecord[];
}

/**
 * Plans the same ball to the same flag for several players, with the same luck, and keeps what each is advised. Yields the
 * share done. Throws InputProblem as planBall does.
 */
export function* playersAdviceSteps(
  scene: Scene,
  { players, ...request }: PlayersRequest,
): Generator<number, readonly PlayerAdvice[]> {
  const found: PlayerAdvice[] = [];
  for (const player of players) {
    const steps = planSteps({ ...scene, player, key: `${scene.key} for ${player.id}` }, request);
    let step = steps.next();
    while (step.done !== true) {
      yield (found.length + step.value) / players.length;
      step = steps.next();
    }
    const { options, chosenId } = step.value;
    const option = options.find(({ id }) => id === chosenId);
    if (option !== undefined) found.push({ playerId: player.id, option, weighed: options.length });
  }
  return found;
}
