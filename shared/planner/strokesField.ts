import type { PlayerRecord } from '../atlas/records.ts';
import { length2 } from '../numeric/elementary.ts';
import { baselineStrokes } from '../player/baseline.ts';
import { coverCode, covers } from '../words/vocabulary.ts';
import type { EffortRules } from './effort.ts';
import type { GreenMap } from './greenMap.ts';
import { priceFrom, type ShooterFrom } from './priceFrom.ts';
import { standardShots } from './standardShots.ts';

/** Strokes to hole out from wherever a shot leaves the ball, for one flag. */
export interface StrokesField {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

const SHOTS_SEED = 20_260_101;

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/**
 * On the green and its fringe: the map of the green. Elsewhere: what the same engine says from the middle of
 * the cell (`priceFrom`), or with a coarse effort what a table says (`baselineStrokes`). Cells are worked out
 * when first asked for and do not depend on the order of asking.
 */
export function strokesField(
  player: PlayerRecord,
  map: GreenMap,
  shooterFrom: ShooterFrom,
  { cellM, cellShots }: Pick<EffortRules, 'cellM' | 'cellShots'>,
): StrokesField {
  const cells = new Map<number, number>();
  const shots = standardShots(cellShots, SHOTS_SEED);
  return {
    at(eastM, northM, code) {
      if (code === GREEN || code === FRINGE) return map.strokesAt(eastM, northM);
      if (cellShots === 0) {
        const distanceM = length2(eastM - map.flag.eastM, northM - map.flag.northM);
        return baselineStrokes(player.level, covers[code] ?? 'fairway', distanceM);
      }
      const column = Math.floor((eastM - map.flag.eastM) / cellM);
      const row = Math.floor((northM - map.flag.northM) / cellM);
      const key = ((column + 4096) * 8192 + (row + 4096)) * 16 + code;
      let value = cells.get(key);
      if (value === undefined) {
        const centre = {
          eastM: map.flag.eastM + (column + 0.5) * cellM,
          northM: map.flag.northM + (row + 0.5) * cellM,
        };
        value = priceFrom(player, map, shooterFrom, shots, centre, covers[code] ?? 'fairway').strokes;
        cells.set(key, value);
      }
      return value;
    },
  };
}
