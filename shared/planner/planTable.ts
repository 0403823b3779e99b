import { troubleChances } from './chanceList.ts';
import { optionName } from './optionName.ts';
import type { Plan } from './plan.ts';

/** Headings of what `troubleChances` gives, in its order. */
const troubleKinds = ['bunker', 'penalty', 'out_of_bounds', 'heavy_rough', 'struck'];

/** The options of a plan as a table, cheapest first, SI units with every digit. */
export function planTable(
  plan: Plan,
  asked: { readonly atlas: string; readonly hole: string; readonly ball: string; readonly flag: string },
): { readonly headings: readonly string[]; readonly rows: readonly (readonly (string | number | null)[])[] } {
  return {
    headings: [
      ...['atlas', 'hole', 'ball', 'flag', 'rank', 'option', 'shot', 'club', 'advised', 'carry_m'],
      ...['landing_on_green_m', 'aim_bearing_deg', 'aim_right_m', 'run_m', 'leave_median_m'],
      ...['up_and_down', 'trouble', 'strokes', 'standard_error_strokes', 'shots', 'cost_strokes'],
      ...['level_with_best', 'swing', 'clubhead_mps', 'holed', 'inside_3_ft', 'inside_6_ft', 'off_green'],
      ...troubleKinds,
    ],
    rows: plan.options.map((option, i) => [
      ...[asked.atlas, asked.hole, asked.ball, asked.flag],
      ...[i + 1, option.id, optionName(option), option.clubName, option.id === plan.chosenId ? 'yes' : ''],
      ...[
        option.landing === null ? null : option.carryM,
        option.landingOnM,
        option.aimBearingDeg,
        option.aimRightM,
        option.runM,
      ],
      ...[option.leave.medianM, option.chances.upAndDown, option.chances.trouble, option.strokes],
      ...[
        option.standardErrorStrokes,
        option.finishCodes.length,
        option.costStrokes,
        option.level ? 'yes' : '',
      ],
      ...[option.size, option.clubheadMps, option.chances.holed, option.chances.insideThreeFeet],
      ...[option.chances.insideSixFeet, option.chances.offGreen],
      ...troubleChances(option).map(({ share }) => share),
    ]),
  };
}
