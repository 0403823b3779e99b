import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { SurveyDoubt } from '../../shared/planner/surveyDoubt.ts';
import type { FittedHole } from '../../shared/exchange/fittedHole.ts';
import type { FlagFault, FlagGround } from '../../shared/terrain/flagGround.ts';
import type { MeasureHere } from '../../shared/terrain/measureNext.ts';
import { decimals, signed } from '../../shared/units/numerals.ts';
import { table } from './table.ts';

export interface Answer {
  readonly at: PlanePoint;
  readonly heightM: number;
  readonly slopePct: number;
  readonly downhillBearingDeg: number;
  readonly heightSdM: number;
  readonly slopeSdPct: number;
}

export interface FlagReport extends FlagGround {
  readonly label: string;
  readonly at: PlanePoint;
}

const faultWords = {
  offGreen: 'off the green',
  nearEdge: 'less than 4 paces from the edge',
  tooSteep: 'steeper than the limit for the green speed',
  uneven: 'not even within 3 ft',
} as const satisfies Readonly<Record<FlagFault, string>>;

export const flagText = ({ label, steepestPct, limitPct, faults }: FlagReport): string =>
  `Flag ${label}: up to ${decimals(steepestPct, 1)} % within 3 ft (limit ${decimals(limitPct, 1)} %)${faults.length === 0 ? ', fair' : `: ${faults.map((fault) => faultWords[fault]).join(', ')}`}`;

export function doubtText(doubt: SurveyDoubt | null): readonly string[] {
  if (doubt === null) return [];
  return [
    `The choice, ${doubt.chosenId}, is the same on ${String(doubt.holds)} of ${String(doubt.surfaces)} surfaces that agree with the readings`,
    ...doubt.options.map(
      ({ id, aimSdM, alongSdM, asideSdM, strokesSd }) =>
        `  ${id}: aim ±${decimals(aimSdM, 2)} m, finish ±${decimals(alongSdM, 2)} m along and ±${decimals(asideSdM, 2)} m aside, ±${decimals(strokesSd, 2)} strokes`,
    ),
  ];
}

export const spotText = (spots: readonly MeasureHere[]): readonly string[] =>
  spots.map(
    ({ at, reduction }, i) =>
      `Measure ${i === 0 ? 'next' : 'then'} at east ${decimals(at.eastM, 1)} m, north ${decimals(at.northM, 1)} m: ${decimals(100 * reduction, 0)} % of the doubt`,
  );

export function textOf(
  { surface }: FittedHole,
  label: string,
  answers: readonly Answer[],
  more: readonly string[],
): string {
  const { readings, disagreements, columns, rows, cellM } = surface;
  let low = Infinity;
  let high = -Infinity;
  for (const height of surface.heightsM) {
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  const lines = [
    `Hole ${label}: ${String(columns)} x ${String(rows)} heights every ${decimals(cellM, 2)} m, from ${decimals(low, 2)} to ${decimals(high, 2)} m`,
    `${String(readings.length)} readings, ${String(disagreements.length)} that the ground does not pass within their accuracy`,
    ...disagreements
      .filter(({ verdict }) => verdict === 'contradicts')
      .map(
        ({ id, kind, othersDiffer, unit }) =>
          `  ${kind} ${id}: the others say ${signed(othersDiffer, unit === 'm' ? 3 : 2)} ${unit === 'm' ? 'm' : '%'} of it`,
      ),
  ];
  const numbers = answers.map(({ at, heightM, slopePct, downhillBearingDeg, heightSdM, slopeSdPct }) => [
    ...[decimals(at.eastM, 2), decimals(at.northM, 2), decimals(heightM, 3), decimals(heightSdM, 3)],
    ...[decimals(slopePct, 2), decimals(slopeSdPct, 2), decimals(downhillBearingDeg, 0)],
  ]);
  const shown =
    answers.length === 0
      ? []
      : [
          '',
          table(
            [
              ...(['east m', 'north m', 'height m', '± m'] as const).map((h) => [h, 'right'] as const),
              ...(['slope %', '± %', 'falls to °'] as const).map((h) => [h, 'right'] as const),
            ],
            numbers,
          ),
        ];
  return `${[...lines, ...more, ...shown].join('\n')}\n`;
}
