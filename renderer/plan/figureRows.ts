import type { PlanOption } from '../../shared/planner/plan.ts';
import {
  chance,
  clubheadSpeed,
  distance,
  flightTop,
  landing,
  leave,
  strokes,
  withUnit,
} from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { carryAndRun } from './carryAndRun.ts';
import { aimWords } from './shotLabels.ts';

/** One figure of an option, as a row of a table that sets options beside each other. */
export interface FigureRow {
  readonly words: string;
  readonly cell: (option: PlanOption) => string;
}

export type Figure =
  'size' | 'swing' | 'reach' | 'land' | 'top' | 'aim' | 'half' | 'most' | 'upAndDown' | 'trouble' | 'strokes';

/** The figures asked for, in their order. */
export function figureRows(units: UnitsPreference, figures: readonly Figure[]): readonly FigureRow[] {
  const rows: Readonly<Record<Figure, FigureRow>> = {
    size: { words: 'Swing', cell: ({ size }) => size },
    swing: {
      words: 'Swing',
      cell: ({ size, clubheadMps }) => `${size}, ${withUnit(clubheadSpeed(clubheadMps, units))}`,
    },
    reach: {
      words: 'Carry + run',
      cell: (option) => `${carryAndRun(option, units)}\u00a0${distance(0, units).unit}`,
    },
    land: {
      words: 'Land, paces',
      cell: (option) =>
        option.landing === null
          ? 'it rolls'
          : option.landingOnM === null
            ? 'off'
            : landing(option.landingOnM, units).text,
    },
    top: {
      words: 'Top of flight',
      cell: ({ apexM }) => (apexM < 0.05 ? '–' : withUnit(flightTop(apexM, units))),
    },
    aim: { words: 'Aim', cell: ({ aimRightM }) => aimWords(aimRightM, units) },
    half: { words: 'Half stop within', cell: (option) => withUnit(leave(option.leave.medianM, units)) },
    most: { words: 'Nine in ten within', cell: (option) => withUnit(leave(option.leave.q90M, units)) },
    upAndDown: { words: 'Up and down', cell: ({ chances }) => withUnit(chance(chances.upAndDown)) },
    trouble: { words: 'Trouble', cell: ({ chances }) => withUnit(chance(chances.trouble)) },
    strokes: { words: 'Strokes', cell: (option) => strokes(option.strokes) },
  };
  return figures.map((figure) => rows[figure]);
}
