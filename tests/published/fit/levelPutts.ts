import { coverTable } from '../../../shared/ball/coverPhysics.ts';
import { makeChance } from '../../../shared/planner/makeChance.ts';
import { puttRoller, ROLL_HOLED } from '../../../shared/planner/puttRoller.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';
import type { PuttAhead } from '../../../shared/player/misread.ts';
import { PUTT_PAST_M, type PuttingErrors, puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from './puttingGround.ts';

const FOOT_M = 0.3048;
const ground = tiltedGround(0);
const rollingMps2 = coverTable(levelDay).rollingMps2;
const green = rollingMps2[0] ?? 0;
/** Lengths, metres, at which a second putt is valued; between them its chance is taken as straight. */
const LEAVES_M = Array.from({ length: 60 }, (_, k) => 0.05 * 1.1 ** k);

/** Shares of first and second putts that drop on an endless level green at stimp 10. */
export interface LevelPutts {
  readonly one: number;
  readonly two: number;
  readonly three: number;
  /** Expected putts, none taking more than three. */
  readonly strokes: number;
}

/** A putt of one length on that green, with the pace that is meant. */
export function levelPutt(lengthM: number, pastM = PUTT_PAST_M): PuttAhead {
  return {
    distanceM: lengthM,
    startMps: Math.sqrt(2 * green * (lengthM + pastM)),
    holeMps: Math.sqrt(2 * green * pastM),
    rollingMps2: green,
  };
}

/** Chance that a putt of one length drops. */
export function levelChance(errors: PuttingErrors, lengthM: number, pastM = PUTT_PAST_M): number {
  const putt = levelPutt(lengthM, pastM);
  const { lineSdDeg, speedSd } = puttingSpread(errors, putt);
  return makeChance(
    ground,
    rollingMps2,
    { eastM: 0, northM: 0 },
    {
      from: { eastM: 0, northM: -lengthM },
      speedMps: putt.startMps,
      bearing: 0,
      speedSd,
      lineSd: (lineSdDeg * Math.PI) / 180,
    },
  );
}

/** Rolls first putts of one length with these errors, and values what each miss leaves. */
export function levelPutts(
  errors: PuttingErrors,
  pastM = PUTT_PAST_M,
  count = 4000,
): (feet: number) => LevelPutts {
  const chances = LEAVES_M.map((lengthM) => levelChance(errors, lengthM, pastM));
  const chanceFrom = (lengthM: number): number => {
    const k = LEAVES_M.findIndex((knot) => knot >= lengthM);
    if (k <= 0) return (k < 0 ? chances.at(-1) : chances[0]) ?? 0;
    const [x0, x1] = [LEAVES_M[k - 1] ?? 0, LEAVES_M[k] ?? 1];
    const [y0, y1] = [chances[k - 1] ?? 0, chances[k] ?? 0];
    return y0 + ((y1 - y0) * (lengthM - x0)) / (x1 - x0);
  };
  const shots = standardShots(count, 12);
  return (feet) => {
    const lengthM = feet * FOOT_M;
    const putt = levelPutt(lengthM, pastM);
    const { lineSdDeg, speedSd } = puttingSpread(errors, putt);
    const roller = puttRoller(ground, levelDay, { eastM: 0, northM: lengthM });
    let missed = 0;
    let two = 0;
    for (let i = 0; i < count; i += 1) {
      const speed = putt.startMps * Math.max(0.1, 1 + speedSd * (shots[i * DRAWS_PER_SHOT] ?? 0));
      const line = ((lineSdDeg * Math.PI) / 180) * (shots[i * DRAWS_PER_SHOT + 1] ?? 0);
      const end = roller.roll(0, 0, speed, line);
      if (end.code === ROLL_HOLED) continue;
      missed += 1;
      two += chanceFrom(Math.hypot(end.eastM, end.northM - lengthM));
    }
    // The sample says what a miss leaves; how often one misses is known better.
    const one = levelChance(errors, lengthM, pastM);
    const second = missed > 0 ? ((1 - one) * two) / missed : 1 - one;
    const three = 1 - one - second;
    return { one, two: second, three, strokes: 2 - one + three };
  };
}

/** Feet from which so many putts are expected, between 5 and 60 ft. */
export function feetOf(putts: (feet: number) => LevelPutts, strokes: number): number {
  let low = 5;
  let high = 60;
  for (let k = 0; k < 12; k += 1) {
    const middle = (low + high) / 2;
    if (putts(middle).strokes < strokes) low = middle;
    else high = middle;
  }
  return high;
}
