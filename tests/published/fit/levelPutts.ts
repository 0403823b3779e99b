import type { PlayerLevel } from '../../../shared/atlas/records.ts';
import { coverTable } from '../../../shared/ball/coverPhysics.ts';
import { makeChance } from '../../../shared/planner/makeChance.ts';
import { puttRoller, ROLL_HOLED } from '../../../shared/planner/puttRoller.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';
import { puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from './puttingGround.ts';

const FOOT_M = 0.3048;
const PUTTS = 4000;
const ground = tiltedGround(0);
const { rollingMps2 } = coverTable(levelDay);
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

const paceTo = (lengthM: number, pastM: number): number =>
  Math.sqrt(2 * (rollingMps2[0] ?? 0) * (lengthM + pastM));

function secondChance(level: PlayerLevel, lengthM: number): number {
  const { lineSdDeg, speedSd, pastM } = puttingSpread(level, lengthM);
  return makeChance(
    ground,
    rollingMps2,
    { eastM: 0, northM: 0 },
    {
      from: { eastM: 0, northM: -lengthM },
      speedMps: paceTo(lengthM, pastM),
      bearing: 0,
      speedSd,
      lineSd: (lineSdDeg * Math.PI) / 180,
    },
  );
}

/** Rolls first putts of one length with the level's spread, and values what each miss leaves. */
export function levelPutts(level: PlayerLevel): (feet: number) => LevelPutts {
  const chances = LEAVES_M.map((lengthM) => secondChance(level, lengthM));
  const chanceFrom = (lengthM: number): number => {
    const k = LEAVES_M.findIndex((knot) => knot >= lengthM);
    if (k <= 0) return (k < 0 ? chances.at(-1) : chances[0]) ?? 0;
    const [x0, x1] = [LEAVES_M[k - 1] ?? 0, LEAVES_M[k] ?? 1];
    const [y0, y1] = [chances[k - 1] ?? 0, chances[k] ?? 0];
    return y0 + ((y1 - y0) * (lengthM - x0)) / (x1 - x0);
  };
  const shots = standardShots(PUTTS, 12);
  return (feet) => {
    const lengthM = feet * FOOT_M;
    const { lineSdDeg, speedSd, pastM } = puttingSpread(level, lengthM);
    const roller = puttRoller(ground, levelDay, { eastM: 0, northM: lengthM });
    const pace = paceTo(lengthM, pastM);
    let one = 0;
    let two = 0;
    for (let i = 0; i < PUTTS; i += 1) {
      const speed = pace * (1 + speedSd * (shots[i * DRAWS_PER_SHOT] ?? 0));
      const line = ((lineSdDeg * Math.PI) / 180) * (shots[i * DRAWS_PER_SHOT + 1] ?? 0);
      const end = roller.roll(0, 0, speed, line);
      if (end.code === ROLL_HOLED) one += 1;
      else two += chanceFrom(Math.hypot(end.eastM, end.northM - lengthM));
    }
    const three = 1 - (one + two) / PUTTS;
    return { one: one / PUTTS, two: two / PUTTS, three, strokes: 1 + (PUTTS - one) / PUTTS + three };
  };
}

/** Feet from which a level expects so many putts, between 5 and 60 ft. */
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
