import type { PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { DrawnShot } from '../../shared/plate/shotMark.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { besideMark } from './besideMark.ts';
import { aimLabel, landLabel } from './shotLabels.ts';

/** An option as proposed and others beside it, ready for the plate; the proposed one last, on top. */
export function planShots(
  scene: Scene,
  ballId: string | null,
  flagId: string | null,
  option: PlanOption,
  others: readonly PlanOption[],
  coarse: boolean,
  units: UnitsPreference,
): readonly DrawnShot[] {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return [];
  const place = { ball: ball.at, flag: flag.at, coarse };
  return [
    ...others.map((other, i) => ({
      ...place,
      option: other,
      role: 'second' as const,
      aimText: '',
      landText: besideMark(i + 1, others.length + 1),
    })),
    {
      ...place,
      option,
      role: 'proposed',
      aimText: aimLabel(option, units),
      landText: landLabel(option, units),
    },
  ];
}
