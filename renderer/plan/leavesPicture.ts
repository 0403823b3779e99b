import type { PlanePoint } from '../../shared/geometry/points.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import { drawLeaves, leavesText } from '../../shared/plate/leavesChart.ts';
import { leaveShares } from '../../shared/plate/leaveShares.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

const USUAL_WIDTH = 420;

/** Where the balls of an option stop, drawn at a width. */
export function leavesPicture(
  option: PlanOption,
  flag: PlanePoint,
  units: UnitsPreference,
  width = USUAL_WIDTH,
  symbolScale = 1,
): SvgNode {
  const shares = leaveShares(option, flag, units);
  const description = `Where the balls of ${optionName(option)} stop: ${leavesText(shares)}`;
  return drawLeaves(width, screenStyle('leaves', symbolScale), shares, description);
}
