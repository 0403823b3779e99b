import type { PlayerRecord } from '../atlas/records.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability, type Candidate } from '../player/availability.ts';
import { baselineStrokes } from '../player/baseline.ts';
import {
  type Cover,
  coverCode,
  covers,
  type LieQuality,
  type Technique,
  techniques,
} from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import { type Aim, solveAim } from './solveAim.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';

/** Makes the shooter of a candidate from a point, lying on a cover, for shots along a bearing (radians). */
export type ShooterFrom = (
  candidate: Candidate,
  from: PlanePoint,
  cover: Cover,
  quality: LieQuality,
  bearing: number,
) => Shooter;

export interface Price {
  readonly strokes: number;
  /** The simplest technique within the player's margin; null where nothing plain gets there. */
  readonly technique: Technique | null;
}

/** Near enough to the flag for a price, metres. */
const CLOSE_M = 0.25;
/** Shots of an option by the end of each round, and how many strokes behind the best of that round so far it drops out of it. */
const ROUNDS = [
  [4, Infinity],
  [8, 0.15],
  [Infinity, 0.08],
] as const;

interface Priced {
  readonly technique: Technique;
  readonly shooter: Shooter;
  readonly aim: Aim;
  sum: number;
  shots: number;
  strokes: number;
}

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/**
 * A quick price of a place off the green: a few plain options aimed at the flag, a handful of shots each,
 * valued on the map where they finish on the green and by a table (`baselineStrokes`) where they miss again.
 * Where nothing plain gets there, the table and a stroke lost on the way out.
 */
export function priceFrom(
  player: PlayerRecord,
  map: GreenMap,
  shooterFrom: ShooterFrom,
  shots: Float64Array,
  from: PlanePoint,
  cover: Cover,
): Price {
  const east = map.flag.eastM - from.eastM;
  const north = map.flag.northM - from.northM;
  const distance = Math.max(1, length2(east, north));
  const bearing = atan2(east, north);
  const count = shots.length / DRAWS_PER_SHOT;
  const cost = (shooter: Shooter, aim: Aim, shot: number): number => {
    shooter.struck(aim.clubheadMps, aim.bearing, shots, shot);
    const rest = shooter.out[CODE] ?? 0;
    const restEast = shooter.out[REST_EAST] ?? 0;
    const restNorth = shooter.out[REST_NORTH] ?? 0;
    if (rest === CODE_HOLED) return 1;
    if (isLost(rest)) return 2 + baselineStrokes(player.level, cover, distance);
    if (rest === GREEN || rest === FRINGE) return 1 + map.strokesAt(restEast, restNorth);
    const left = length2(restEast - map.flag.eastM, restNorth - map.flag.northM);
    return 1 + baselineStrokes(player.level, covers[rest] ?? 'fairway', left);
  };
  const priced: Priced[] = [];
  for (const candidate of plainOptions(player, cover, distance)) {
    const shooter = shooterFrom(candidate, from, cover, 'clean', bearing);
    const aim = solveAim(shooter, from, map.flag, 'rest', undefined, CLOSE_M);
    if (aim.missM <= 2 + 0.5 * distance)
      priced.push({ technique: candidate.technique, shooter, aim, sum: 0, shots: 0, strokes: NaN });
  }
  // The most promising are shot to the end first, and tell the others what they have to come near.
  for (const [until, hopeless] of ROUNDS) {
    let least = Infinity;
    for (const one of priced) {
      if (one.strokes > least + hopeless) continue;
      for (; one.shots < Math.min(count, until); one.shots += 1)
        one.sum += cost(one.shooter, one.aim, one.shots);
      one.strokes = one.sum / one.shots;
      least = Math.min(least, one.strokes);
    }
    priced.sort((a, b) => a.strokes - b.strokes);
  }
  const best = priced.reduce((least, p) => Math.min(least, p.strokes), Infinity);
  if (best === Infinity) {
    return { strokes: NO_WAY_STROKES + baselineStrokes(player.level, cover, distance), technique: null };
  }
  const simple = priced
    .filter((p) => p.strokes <= best + player.simplicityMarginStrokes)
    .sort((a, b) => techniques.indexOf(a.technique) - techniques.indexOf(b.technique))[0];
  return { strokes: best, technique: simple?.technique ?? null };
}

/** Added where no plain shot reaches: some of the time it takes a shot just to get out. Assumed. */
const NO_WAY_STROKES = 0.6;

/** One club for each of the everyday techniques: enough to price a miss. */
function plainOptions(player: PlayerRecord, cover: Cover, distanceM: number): readonly Candidate[] {
  const { candidates } = availability(player, cover, 'clean', distanceM);
  const chosen: Candidate[] = [];
  for (const technique of ['putt', 'bumpAndRun', 'chip', 'pitch', 'splash'] as const) {
    const clubs = candidates.filter((candidate) => candidate.technique === technique);
    const pick = clubs[technique === 'chip' ? Math.floor(clubs.length / 2) : clubs.length - 1];
    if (pick !== undefined) chosen.push(pick);
  }
  return chosen.length > 0 ? chosen : candidates.slice(0, 2);
}
