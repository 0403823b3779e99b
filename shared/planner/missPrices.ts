import type { PlayerRecord } from '../atlas/records.ts';
import { covers } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { priceFrom, type ShooterFrom } from './priceFrom.ts';
import { standardShots } from './standardShots.ts';

/** Strokes to hole out from places off the green, for one flag. */
export interface MissPrices {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

/** Side of a cell that shares one price, metres. */
const CELL_M = 3;
const SHOTS_PER_OPTION = 16;
const SHOTS_SEED = 20_260_101;

/**
 * What the same engine says from the middle of a cell (`priceFrom`). Cells are worked out when first asked for
 * and do not depend on the order of asking, so that coarse and full answers share them.
 */
export function missPrices(player: PlayerRecord, map: GreenMap, shooterFrom: ShooterFrom): MissPrices {
  const cells = new Map<number, number>();
  const shots = standardShots(SHOTS_PER_OPTION, SHOTS_SEED);
  const { flag } = map;
  return {
    at(eastM, northM, code) {
      const column = Math.floor((eastM - flag.eastM) / CELL_M);
      const row = Math.floor((northM - flag.northM) / CELL_M);
      const key = ((column + 4096) * 8192 + (row + 4096)) * 16 + code;
      let value = cells.get(key);
      if (value === undefined) {
        const centre = {
          eastM: flag.eastM + (column + 0.5) * CELL_M,
          northM: flag.northM + (row + 0.5) * CELL_M,
        };
        value = priceFrom(player, map, shooterFrom, shots, centre, covers[code] ?? 'fairway').strokes;
        cells.set(key, value);
      }
      return value;
    },
  };
}
