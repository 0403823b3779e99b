import { recordsOf } from '../atlas/document.ts';
import type { AtlasDocument, RecordOf } from '../atlas/records.ts';
import type { PlanePoint } from '../geometry/points.ts';
import type { Plan, PlanOption } from '../planner/plan.ts';
import type { Scene } from '../planner/scene.ts';
import { type LineAsked, type SureLines, UNSURE_AIM_M } from '../planner/sureLine.ts';
import * as format from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { flagPlace, flagPlaceText } from './flagPlace.ts';
import { playBearing } from './placeWords.ts';

/** Doubt of the line is told where it is this share of the player's own scatter to the side: it widens that by an eighth. */
const TELLING_SHARE = 0.5;

/** What a player chose for a ball and a flag, if anything. */
export const choiceOf = (
  document: AtlasDocument,
  playerId: string,
  { ballId, flagId }: Pick<Plan, 'ballId' | 'flagId'>,
): RecordOf<'choice'> | undefined =>
  recordsOf(document, 'choice').find(
    (choice) => choice.ballId === ballId && choice.flagId === flagId && choice.playerId === playerId,
  );

/** The option that is printed: the player's choice where it is still there, else the advice. */
export function printedOption(document: AtlasDocument, playerId: string, plan: Plan): PlanOption | undefined {
  const chosenId = choiceOf(document, playerId, plan)?.optionId;
  return (
    plan.options.find(({ id }) => id === chosenId) ?? plan.options.find(({ id }) => id === plan.chosenId)
  );
}

/** The printed shots of a scene, for `sureLinesSteps`. */
export const linesAsked = (
  document: AtlasDocument,
  { flags, balls, player }: Scene,
  plans: readonly Plan[],
): readonly { readonly flagId: string; readonly lines: readonly LineAsked[] }[] =>
  flags.map(({ record: { id: flagId } }) => ({
    flagId,
    lines: balls.flatMap(({ record: { id: ballId } }) => {
      const plan = plans.find((one) => one.flagId === flagId && one.ballId === ballId);
      const option = plan === undefined ? undefined : printedOption(document, player.id, plan);
      return option === undefined ? [] : [{ ballId, option }];
    }),
  }));

/** "The heights measured leave this line open by ±1½ ft at the flag."; null where the scatter of the shot hides it. */
export function sureText(
  told: SureLines | undefined,
  ballId: string,
  option: PlanOption,
  ball: PlanePoint,
  flag: PlanePoint,
  units: UnitsPreference,
): string | null {
  const line = told?.lines.find((one) => one.ballId === ballId && one.optionId === option.id);
  if (line === undefined || line.aimSdM < UNSURE_AIM_M) return null;
  if (line.aimSdM < TELLING_SHARE * sidewaysM(option, ball, flag)) return null;
  const open = format.withUnit(format.leave(line.aimSdM, units));
  return `The heights measured leave this line open by ±${open} at the flag.`;
}

/** "Measure next, for these lines: 8 on, 5 from left; 10 on, 2 from right."; null where nothing is told to be open. */
export function measureText(
  scene: Scene,
  told: SureLines | undefined,
  units: UnitsPreference,
): string | null {
  const bearing = playBearing(scene);
  const spots = (told?.measureNext ?? []).flatMap(({ at }) => {
    const place = flagPlace(scene.green.polygon, at, bearing);
    return place === null ? [] : [flagPlaceText(place, units)];
  });
  return spots.length === 0 ? null : `Measure next, for these lines: ${spots.join('; ')}, in paces.`;
}

/** Half the width that the middle two thirds of a shot's finishes take up across its line, metres. */
function sidewaysM({ finishesM }: PlanOption, ball: PlanePoint, flag: PlanePoint): number {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const length = Math.max(0.01, Math.sqrt(east * east + north * north));
  const aside: number[] = [];
  for (let i = 0; i + 1 < finishesM.length; i += 2) {
    const x = (finishesM[i] ?? NaN) - flag.eastM;
    const y = (finishesM[i + 1] ?? NaN) - flag.northM;
    aside.push((x * north - y * east) / length);
  }
  aside.sort((a, b) => a - b);
  const at = (share: number): number => aside[Math.floor(share * (aside.length - 1))] ?? 0;
  return (at(0.84) - at(0.16)) / 2;
}
