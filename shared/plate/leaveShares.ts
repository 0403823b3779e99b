import type { PlanePoint } from '../geometry/points.ts';
import type { PlanOption } from '../planner/plan.ts';
import { metresFromFeet } from '../units/conversions.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { type Cover, covers } from '../words/vocabulary.ts';
import { isTroubleFinish } from './finishCodes.ts';

export interface LeaveShare {
  readonly words: string;
  /** Of all simulated shots, 0 to 1. */
  readonly share: number;
  /** A kind of ground the map marks with crosses. */
  readonly trouble: boolean;
}

/** Where the simulated balls of an option stop. */
export interface LeaveShares {
  /** By distance to the hole; together they are all shots. */
  readonly distances: readonly LeaveShare[];
  /** Those off the green by what they lie on, worst kinds last; empty where none is. */
  readonly offGreen: readonly LeaveShare[];
}

const HOLED = 254;
const LOST = 255;

const groundWords: Readonly<Record<Cover, string>> = {
  green: 'on the green',
  fringe: 'on the fringe',
  approach: 'on the approach',
  fairway: 'on fairway',
  lightRough: 'in light rough',
  heavyRough: 'in heavy rough',
  bare: 'on bare ground',
  bunker: 'in sand',
  penaltyArea: 'in a penalty area',
  outOfBounds: 'out of bounds',
  path: 'on a path',
  tee: 'on a tee',
};

/** Counts finishes by distance and by ground. */
export function leaveShares(
  { finishesM, finishCodes }: Pick<PlanOption, 'finishesM' | 'finishCodes'>,
  flag: PlanePoint,
  units: UnitsPreference,
): LeaveShares {
  const yards = units.system === 'yards';
  const limits = yards ? [3, 6, 10, 20] : [1, 2, 3, 6];
  const unit = yards ? 'ft' : 'm';
  const bands = [...limits, Infinity].map(() => 0);
  const byCode = new Map<number, number>();
  let holed = 0;
  const all = Math.max(1, finishCodes.length);
  for (const [i, code] of finishCodes.entries()) {
    if (code === HOLED) {
      holed += 1;
      continue;
    }
    byCode.set(code, (byCode.get(code) ?? 0) + 1);
    const leftM = Math.hypot((finishesM[2 * i] ?? 0) - flag.eastM, (finishesM[2 * i + 1] ?? 0) - flag.northM);
    const found = limits.findIndex((limit) => leftM <= (yards ? metresFromFeet(limit) : limit));
    const band = found < 0 ? limits.length : found;
    bands[band] = (bands[band] ?? 0) + 1;
  }
  const distances = bands.map((count, i) => {
    const [from, to] = [limits[i - 1], limits[i]];
    const words =
      to === undefined
        ? `over ${from ?? 0} ${unit}`
        : from === undefined
          ? `within ${to} ${unit}`
          : `${from} to ${to} ${unit}`;
    return { words, share: count / all, trouble: false };
  });
  const offGreen = [...byCode]
    .filter(([code]) => covers[code] !== 'green')
    .map(([code, count]) => {
      const cover = covers[code];
      const words = code === LOST || cover === undefined ? 'never at rest' : groundWords[cover];
      return { words, share: count / all, trouble: isTroubleFinish(code) };
    })
    .toSorted((a, b) => Number(a.trouble) - Number(b.trouble) || b.share - a.share);
  return { distances: [{ words: 'holed', share: holed / all, trouble: false }, ...distances], offGreen };
}
