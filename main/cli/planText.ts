import type { RecordOf } from '../../shared/atlas/records.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { nearChances, troubleChances } from '../../shared/planner/chanceList.ts';
import { reasonText } from '../../shared/planner/reasonText.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { swingWords } from '../../shared/player/swingWords.ts';
import {
  aim,
  chance,
  distance,
  greenSpeed,
  landing,
  leave,
  strokeCost,
  strokes,
  withUnit,
} from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { table } from './table.ts';

export interface PlanTextParts {
  readonly scene: Scene;
  readonly ball: RecordOf<'ballPosition'>;
  readonly flag: RecordOf<'holeLocation'>;
  readonly units: UnitsPreference;
}

/**
 * A plan to be read on a terminal: what was asked, the ledger of options, and why the advice is what it is. Its spaces are
 * those a person would type to search it.
 */
export function planText(plan: Plan, { scene, ball, flag, units }: PlanTextParts): string {
  const chosen = plan.options.find(({ id }) => id === plan.chosenId);
  const rows = plan.options.map((option, rank) => row(option, rank, plan, units));
  const ledger = table(
    [
      ['', 'left'],
      ['shot', 'left'],
      ['swing', 'left'],
      [`carry ${distance(0, units).unit}`, 'right'],
      ['land', 'right'],
      [`aim ${aim(1, units).unit}`, 'right'],
      [`run ${distance(0, units).unit}`, 'right'],
      [`leave ${leave(0, units).unit}`, 'right'],
      ['up and down', 'right'],
      ['trouble', 'right'],
      ['strokes', 'right'],
      ['cost', 'right'],
    ],
    rows,
  );
  const why = chosen?.reasons.map((reason) => `  ${reasonText(reason, units)}`) ?? [];
  const left = plan.leftOut.map(({ reason }) => `  ${reasonText(reason, units)}`);
  return [
    `Hole ${scene.hole.label}, ball ${ball.label}${ball.name === '' ? '' : ` (${ball.name})`} to flag ${flag.label}: ${withUnit(distance(plan.distanceM, units))}, green speed ${withUnit(greenSpeed(scene.conditions.stimpFt))}${scene.conditions.flagstickIn === true ? ', flagstick in' : ''}, for ${scene.player.name}`,
    '',
    ledger,
    '',
    ...(chosen === undefined
      ? []
      : [
          `${optionName(chosen)}:`,
          `  ${swingWords(chosen, scene.player.bag, units)}.`,
          `  ${chanceText(chosen, units)}.`,
          ...why,
        ]),
    ...(left.length === 0 ? [] : ['Left out:', ...left]),
    '',
  ]
    .join('\n')
    .replaceAll('\u00a0', ' ');
}

function row(option: PlanOption, rank: number, plan: Plan, units: UnitsPreference): readonly string[] {
  const mark = `${option.id === plan.chosenId ? '>' : ''}${option.id === plan.safeId ? 's' : ''}`;
  return [
    mark,
    optionName(option),
    option.size,
    option.landing === null ? '' : distance(option.carryM, units).text,
    option.landing === null
      ? 'rolls'
      : option.landingOnM === null
        ? 'off'
        : landing(option.landingOnM, units).text,
    aim(option.aimRightM, units).text,
    distance(option.runM, units).text,
    leave(option.leave.medianM, units).text,
    withUnit(chance(option.chances.upAndDown)),
    withUnit(chance(option.chances.trouble)),
    strokes(option.strokes),
    strokeCost(option.costStrokes, rank === 0, option.level),
  ];
}

/** "Holed 2 %, inside 3 ft 11 %, ...": every chance of a shot, of trouble what there is. */
function chanceText(option: PlanOption, units: UnitsPreference): string {
  const text = [...nearChances(option, units), ...troubleChances(option).filter(({ share }) => share > 0)]
    .map(({ words, share }) => `${words} ${withUnit(chance(share))}`)
    .join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}
