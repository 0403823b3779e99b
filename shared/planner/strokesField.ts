import type { PlayerRecord } from '../atlas/records.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, length2 } from '../numeric/elementary.ts';
import { availability, type Candidate } from '../player/availability.ts';
import { baselineStrokes } from '../player/baseline.ts';
import { type Cover, coverCode, covers, type LieQuality } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { CODE, CODE_HOLED, isLost, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import { solveAim } from './solveAim.ts';
import { standardShots } from './standardShots.ts';

/** Strokes to hole out from wherever a shot leaves the ball, for one flag. */
export interface StrokesField {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

/** Makes the shooter of a candidate from a point, lying on a cover, for shots along a bearing (radians). */
export type ShooterFrom = (
  candidate: Candidate,
  from: PlanePoint,
  cover: Cover,
  quality: LieQuality,
  bearing: number,
) => Shooter;

/** Side of a cell off the green that shares one value, metres. */
const CELL_M = 2.5;
const SHOTS_PER_OPTION = 20;

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/**
 * On the green and its fringe: the map of the green. Elsewhere: what the same engine says of a few plain options from the middle of
 * the cell, valued on the map where they finish on the green and by a table (`baselineStrokes`) where they miss again. Cells
 * are worked out when first asked for and do not depend on the order of asking.
 */
export function strokesField(player: PlayerRecord, map: GreenMap, shooterFrom: ShooterFrom): StrokesField {
  const cells = new Map<number, number>();
  const shots = standardShots(SHOTS_PER_OPTION, 20_260_101);

  const valueOfCell = (centre: PlanePoint, code: number): number => {
    const cover = covers[code] ?? 'fairway';
    const distance = Math.max(1, length2(centre.eastM - map.flag.eastM, centre.northM - map.flag.northM));
    const bearing = atan2(map.flag.eastM - centre.eastM, map.flag.northM - centre.northM);
    let best = Infinity;
    for (const candidate of plainOptions(player, cover, distance)) {
      const shooter = shooterFrom(candidate, centre, cover, 'clean', bearing);
      const aim = solveAim(shooter, centre, map.flag, 'rest');
      if (aim.missM > 2 + 0.5 * distance) continue;
      let sum = 0;
      for (let i = 0; i < SHOTS_PER_OPTION; i += 1) {
        shooter.struck(aim.clubheadMps, aim.bearing, shots, i);
        const rest = shooter.out[CODE] ?? 0;
        const east = shooter.out[REST_EAST] ?? 0;
        const north = shooter.out[REST_NORTH] ?? 0;
        if (rest === CODE_HOLED) sum += 1;
        else if (isLost(rest)) sum += 2 + baselineStrokes(player.level, cover, distance);
        else if (rest === GREEN || rest === FRINGE) sum += 1 + map.strokesAt(east, north);
        else {
          const left = length2(east - map.flag.eastM, north - map.flag.northM);
          sum += 1 + baselineStrokes(player.level, covers[rest] ?? 'fairway', left);
        }
      }
      best = Math.min(best, sum / SHOTS_PER_OPTION);
    }
    return best < Infinity ? best : 0.6 + baselineStrokes(player.level, cover, distance);
  };

  return {
    at(eastM, northM, code) {
      if (code === GREEN || code === FRINGE) return map.strokesAt(eastM, northM);
      const column = Math.floor((eastM - map.flag.eastM) / CELL_M);
      const row = Math.floor((northM - map.flag.northM) / CELL_M);
      const key = ((column + 4096) * 8192 + (row + 4096)) * 16 + code;
      let value = cells.get(key);
      if (value === undefined) {
        const centre: PlanePoint = {
          eastM: map.flag.eastM + (column + 0.5) * CELL_M,
          northM: map.flag.northM + (row + 0.5) * CELL_M,
        };
        value = valueOfCell(centre, code);
        cells.set(key, value);
      }
      return value;
    },
  };
}

/** One club for each of the everyday techniques: enough to price a miss. */
function plainOptions(player: PlayerRecord, cover: Cover, distanceM: number): readonly Candidate[] {
  const { candidates } = availability(player, cover, 'clean', distanceM);
  const chosen: Candidate[] = [];
  for (const technique of ['putt', 'chip', 'pitch', 'splash'] as const) {
    const clubs = candidates.filter((candidate) => candidate.technique === technique);
    const pick = clubs[technique === 'chip' ? Math.floor(clubs.length / 2) : clubs.length - 1];
    if (pick !== undefined) chosen.push(pick);
  }
  return chosen.length > 0 ? chosen : candidates.slice(0, 2);
}
