import type { PlayerRecord } from '../atlas/records.ts';
import { length2 } from '../numeric/elementary.ts';
import { baselineStrokes } from '../player/baseline.ts';
import { type GroundReads, noteAgain, nothingRead, packed } from '../terrain/groundReads.ts';
import { covers } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { notedNow } from './noted.ts';
import { priceFrom, type ShooterFrom } from './priceFrom.ts';
import { standardShots } from './standardShots.ts';

/** Strokes to hole out from places off the green, for one flag. */
export interface MissPrices {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

interface PricedCell {
  readonly beyondTable: number;
  /** The ground its price comes from, and in which notes that is already. */
  readonly looks: Uint8Array;
  notedIn: Uint8Array | null;
}

/**
 * Side of a cell that shares one price, metres, and how far from the flag it is so fine: near it and in sand, where little
 * changes from pace to pace, and where few balls come to rest.
 */
const CELLS = [
  { sideM: 3, withinM: 18 },
  { sideM: 6, withinM: 36 },
  { sideM: 12, withinM: Infinity },
] as const;
const SHOTS_PER_OPTION = 16;
const SHOTS_SEED = 20_260_101;

/**
 * What the same engine says from the middle of a cell (`priceFrom`), carried to the point by what the tables say of the
 * difference in distance. Against prices of the very point this misses by 0.04 strokes beyond 18 m whether the cells are
 * 3 m or 6 m wide; the few shots of a price account for that. Beyond 36 m, where one shot in a hundred ends, cells of 12 m
 * miss by 0.06 (mean misses, measured). Cells are worked out when first asked for and
 * do not depend on the order of asking, so that coarse and full answers share them.
 */
export function missPrices(
  player: PlayerRecord,
  map: GreenMap,
  shooterFrom: ShooterFrom,
  reads: GroundReads,
): MissPrices {
  const cells = new Map<number, PricedCell>();
  const shots = standardShots(SHOTS_PER_OPTION, SHOTS_SEED);
  const { flag } = map;
  const { level } = player;
  return {
    at(eastM, northM, code) {
      const east = eastM - flag.eastM;
      const north = northM - flag.northM;
      const cover = covers[code] ?? 'fairway';
      const apart = length2(east, north);
      const grade = cover === 'bunker' || apart <= CELLS[0].withinM ? 0 : apart <= CELLS[1].withinM ? 1 : 2;
      const cellM = CELLS[grade].sideM;
      const column = Math.floor(east / cellM);
      const row = Math.floor(north / cellM);
      const key = (((column + 4096) * 8192 + (row + 4096)) * 4 + grade) * 16 + code;
      let cell = cells.get(key);
      if (cell === undefined) {
        const [middleEast, middleNorth] = [(column + 0.5) * cellM, (row + 0.5) * cellM];
        const centre = { eastM: flag.eastM + middleEast, northM: flag.northM + middleNorth };
        const looks = nothingRead(reads);
        const { strokes } = notedNow(reads, looks, () =>
          priceFrom(player, map, shooterFrom, shots, centre, cover),
        );
        const beyondTable = strokes - baselineStrokes(level, cover, length2(middleEast, middleNorth));
        cell = { beyondTable, looks: packed(looks), notedIn: null };
        cells.set(key, cell);
      }
      if (cell.notedIn !== reads.into) {
        cell.notedIn = reads.into;
        noteAgain(cell.looks, reads.into);
      }
      return cell.beyondTable + baselineStrokes(level, cover, apart);
    },
  };
}
