import type { PlayerRecord } from '../atlas/records.ts';
import { coverCode, covers } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { priceFrom, type ShooterFrom } from './priceFrom.ts';
import { standardShots } from './standardShots.ts';

/** Strokes to hole out from wherever a shot leaves the ball, for one flag. */
export interface StrokesField {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

/** Side of a cell off the green that shares one value, metres. */
const CELL_M = 2.5;
const SHOTS_PER_OPTION = 16;
const SHOTS_SEED = 20_260_101;

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');

/**
 * On the green and its fringe: the map of the green. Elsewhere: what the same engine says from the middle of
 * the cell (`priceFrom`). Cells are worked out when first asked for and do not depend on the order of asking.
 */
export function strokesField(player: PlayerRecord, map: GreenMap, shooterFrom: ShooterFrom): StrokesField {
  const cells = new Map<number, number>();
  const shots = standardShots(SHOTS_PER_OPTION, SHOTS_SEED);
  return {
    at(eastM, northM, code) {
      if (code === GREEN || code === FRINGE) return map.strokesAt(eastM, northM);
      const column = Math.floor((eastM - map.flag.eastM) / CELL_M);
      const row = Math.floor((northM - map.flag.northM) / CELL_M);
      const key = ((column + 4096) * 8192 + (row + 4096)) * 16 + code;
      let value = cells.get(key);
      if (value === undefined) {
        const centre = {
          eastM: map.flag.eastM + (column + 0.5) * CELL_M,
          northM: map.flag.northM + (row + 0.5) * CELL_M,
        };
        value = priceFrom(player, map, shooterFrom, shots, centre, covers[code] ?? 'fairway').strokes;
        cells.set(key, value);
      }
      return value;
    },
  };
}
