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
import { ALL_STRIKES, FIRST_STRIKES, fewStrikes } from './fewStrikes.ts';
import type { GreenMap } from './greenMap.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import { solveAim } from './solveAim.ts';

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
/** An option so many strokes behind the best after its first strikes is not struck on. */
const HOPELESS_STROKES = 0.12;

interface Priced {
  readonly technique: Technique;
  readonly strokesBy: (strikes: number) => number;
  strokes: number;
}

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/**
 * A quick price of a place off the green: a few plain options aimed at the flag, a handful of strikes each (`fewStrikes`),
 * valued on the map where they finish on the green and by a table (`baselineStrokes`) where they miss again.
 * Where nothing plain gets there, the table and a stroke lost on the way out.
 */
export function priceFrom(
  player: PlayerRecord,
  map: GreenMap,
  shooterFrom: ShooterFrom,
  from: PlanePoint,
  cover: Cover,
): Price {
  const east = map.flag.eastM - from.eastM;
  const north = map.flag.northM - from.northM;
  const distance = Math.max(1, length2(east, north));
  const bearing = atan2(east, north);
  const cost = ({ out }: Shooter): number => {
    const rest = out[CODE] ?? 0;
    const restEast = out[REST_EAST] ?? 0;
    const restNorth = out[REST_NORTH] ?? 0;
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
    if (aim.missM > 2 + 0.5 * distance) continue;
    const strokesBy = fewStrikes(shooter, aim, () => cost(shooter));
    priced.push({ technique: candidate.technique, strokesBy, strokes: strokesBy(FIRST_STRIKES) });
  }
  const near = priced.reduce((least, { strokes }) => Math.min(least, strokes), Infinity) + HOPELESS_STROKES;
  for (const one of priced) if (one.strokes <= near) one.strokes = one.strokesBy(ALL_STRIKES);
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
