import { InputProblem } from '../words/inputProblem.ts';
import type { PlanRequest } from './planBall.ts';
import type { Scene, SceneBall, SceneFlag } from './scene.ts';

/** The ball and the flag of a request. Throws InputProblem for those that are not there and a count of shots that is none. */
export function ballAndFlag(
  scene: Scene,
  request: PlanRequest,
): { readonly ball: SceneBall; readonly flag: SceneFlag } {
  const ball = scene.balls.find((b) => b.record.id === request.ballId);
  const flag = scene.flags.find((f) => f.record.id === request.flagId);
  const place = `Hole ${scene.hole.label}`;
  if (ball === undefined) {
    throw new InputProblem(
      'unknown-ball',
      `there is no ball “${request.ballId}”.`,
      place,
      'Choose one of its balls.',
    );
  }
  if (flag === undefined) {
    throw new InputProblem(
      'unknown-flag',
      `there is no flag “${request.flagId}”.`,
      place,
      'Choose one of its flags.',
    );
  }
  if (!Number.isInteger(request.shotsPerOption) || request.shotsPerOption < 1) {
    throw new InputProblem(
      'bad-shot-count',
      'the number of shots is not a positive whole number.',
      place,
      'Ask for 1 or more.',
    );
  }
  return { ball, flag };
}
