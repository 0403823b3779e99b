import { length2 } from '../numeric/elementary.ts';
import { METRES_PER_YARD } from '../units/conversions.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { needFlags } from './needFlags.ts';
import type { PlanRequest } from './planBall.ts';
import type { Scene, SceneBall, SceneFlag } from './scene.ts';

/** Beyond this the shots around a green, and what is known of them, are left behind: a full wedge. Metres. */
const FARTHEST_M = 100;

const far = (metres: number): string =>
  `${String(Math.round(metres))} m (${String(Math.round(metres / METRES_PER_YARD))} yd)`;

/**
 * The ball and the flag of a request. Throws InputProblem for those that are not there or too far from each other, and a
 * count of shots that is none.
 */
export function ballAndFlag(
  scene: Scene,
  request: PlanRequest,
): { readonly ball: SceneBall; readonly flag: SceneFlag } {
  needFlags(scene);
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
  const apartM = length2(ball.at.eastM - flag.at.eastM, ball.at.northM - flag.at.northM);
  if (apartM > FARTHEST_M) {
    throw new InputProblem(
      'too-far',
      `flag ${flag.record.label} is ${far(apartM)} away, out of reach of the shots around a green.`,
      `${place}, ball ${ball.record.label}`,
      `Plan from within ${far(FARTHEST_M)}.`,
    );
  }
  return { ball, flag };
}
