import { InputProblem } from '../words/inputProblem.ts';

/** One line of a level book: what was read on the staff at a point, looking back, between or forward, metres. */
export interface StaffReading {
  readonly point: string;
  readonly backM: number | null;
  readonly betweenM: number | null;
  readonly foreM: number | null;
}

export interface LevelledHeight {
  readonly point: string;
  /** After the misclosure is shared out. */
  readonly heightM: number;
  readonly rawHeightM: number;
}

export interface LevelLoop {
  readonly heights: readonly LevelledHeight[];
  /** Number of times the instrument was set up. */
  readonly setUps: number;
  readonly sumBackM: number;
  readonly sumForeM: number;
  /** Observed less known height at the end; null where the round does not end on a known height. */
  readonly misclosureM: number | null;
  readonly allowedM: number;
}

/** Common practice for a builder's level over sights of some tens of metres: 5 mm times the root of the set-ups. */
export const ALLOWED_PER_SET_UP_M = 0.005;

/**
 * Reduces a round of levels by the height of the instrument: each back sight on a known point gives that height, each other
 * sight a point from it. The round closes where it ends on its first point, or on one whose height is given in `known`;
 * the misclosure is then shared out by set-ups, the usual rule where sights are of like length.
 *
 * @param known heights of fixed points; the first point is 0 where none is given
 * @throws InputProblem `level-book` for a book that cannot be followed, `level-misclosure` beyond the tolerance
 */
export function reduceLevels(
  readings: readonly StaffReading[],
  known: ReadonlyMap<string, number> = new Map(),
  allowedPerSetUpM: number = ALLOWED_PER_SET_UP_M,
): LevelLoop {
  const refuse = (row: number, what: string, remedy: string): never => {
    throw new InputProblem('level-book', what, `level book, line ${String(row + 1)}`, remedy);
  };
  const first = readings[0];
  if (first === undefined || first.backM === null)
    return refuse(0, 'The round must begin with a back sight.', 'Begin on the benchmark, looking back.');
  const start = known.get(first.point) ?? 0;
  let instrumentM = NaN;
  let heightM = start;
  let setUps = 0;
  let sumBackM = 0;
  let sumForeM = 0;
  const raw: { point: string; heightM: number; setUps: number }[] = [];
  readings.forEach(({ point, backM, betweenM, foreM }, row) => {
    const given = [backM, betweenM, foreM].filter((value) => value !== null);
    if (given.some((value) => !Number.isFinite(value) || value < 0 || value > 10))
      refuse(row, 'A staff reading is not between 0 and 10 m.', 'Correct it, or give its unit.');
    if (given.length === 0)
      refuse(row, `Nothing was read at "${point}".`, 'Take the line out, or give the reading.');
    if (betweenM !== null && (backM !== null || foreM !== null))
      refuse(row, 'An intermediate sight stands beside another.', 'Give each its own line.');
    if (row > 0 && backM !== null && foreM === null)
      refuse(
        row,
        'A back sight follows no fore sight on the same point.',
        'Read the change point forward, then back, on one line.',
      );
    if (foreM !== null || betweenM !== null) {
      heightM = instrumentM - (foreM ?? betweenM ?? NaN);
      sumForeM += foreM ?? 0;
      raw.push({ point, heightM, setUps });
    }
    if (backM !== null) {
      if (row === 0) raw.push({ point, heightM, setUps: 0 });
      instrumentM = heightM + backM;
      sumBackM += backM;
      setUps += 1;
    }
  });
  const last = readings.at(-1);
  const end = raw.at(-1);
  if (last === undefined || end === undefined || (last.foreM === null && last.betweenM === null))
    return refuse(readings.length - 1, 'The round ends with a back sight.', 'End on a fore sight.');
  const endKnown =
    last.foreM === null ? undefined : last.point === first.point ? start : known.get(last.point);
  const misclosureM = endKnown === undefined ? null : end.heightM - endKnown;
  const allowedM = allowedPerSetUpM * Math.sqrt(setUps);
  if (misclosureM !== null && Math.abs(misclosureM) > allowedM)
    throw new InputProblem(
      'level-misclosure',
      `The round closes ${(misclosureM * 1000).toFixed(0)} mm out; for ${String(setUps)} set-ups ${(allowedM * 1000).toFixed(0)} mm would do.`,
      'level book',
      'Look for a slip in reading or writing, or level it again.',
    );
  return {
    heights: raw.map((one) => ({
      point: one.point,
      rawHeightM: one.heightM,
      heightM: one.heightM - ((misclosureM ?? 0) * one.setUps) / setUps,
    })),
    setUps,
    sumBackM,
    sumForeM,
    misclosureM,
    allowedM,
  };
}
