import type { PlayerRecord } from '../atlas/records.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { within } from './flagTools.ts';
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
 * Plans the same ball to the same flag for several players, with the same luck, and keeps what each is advised; one whose
 * bag and marks leave no shot is missing. Yields the share done. Throws InputProblem as planBall does where nobody has one.
 */
export function* playersAdviceSteps(
  scene: Scene,
  { players, ...request }: PlayersRequest,
): Generator<number, readonly PlayerAdvice[]> {
  const found: PlayerAdvice[] = [];
  let refused: InputProblem | null = null;
  for (const [index, player] of players.entries()) {
    const there = { ...scene, player, key: `${scene.key} for ${player.id}` };
    try {
      const from = index / players.length;
      const plan = yield* within(from, (index + 1) / players.length, planSteps(there, request));
      const option = plan.options.find(({ id }) => id === plan.chosenId);
      if (option !== undefined) found.push({ playerId: player.id, option, weighed: plan.options.length });
    } catch (problem) {
      if (!(problem instanceof InputProblem)) throw problem;
      refused = problem;
    }
  }
  if (found.length === 0 && refused !== null) throw refused;
  return found;
}
