import type { PlayerRecord } from '../atlas/records.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, cos, length2, sin } from '../numeric/elementary.ts';
import { baselineStrokes } from '../player/baseline.ts';
import { DEFAULT_COVER } from '../terrain/coverRaster.ts';
import { noteAgain, nothingRead, packed } from '../terrain/groundReads.ts';
import type { Surface } from '../terrain/surface.ts';
import type { SurveyedGround } from '../terrain/surveyedGround.ts';
import { coverCode, covers } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import { notedNow } from './noted.ts';
import { priceFrom, type ShooterFrom } from './priceFrom.ts';

/** Strokes to hole out from places off the green, for one flag. */
export interface MissPrices {
  /** `code` is the cover the ball lies on. */
  at(eastM: number, northM: number, code: number): number;
}

/** A place that has been priced for one cover. */
interface PricedPlace {
  /** Strokes over the table. */
  readonly beyondTable: number;
  /** Whether a ball on that cover can lie there: other places count only where none of those around can have one. */
  readonly fits: boolean;
  /** The ground its price comes from, and in which notes that is already. */
  readonly looks: Uint8Array;
  notedIn: Uint8Array | null;
}

/**
 * On grass: rings around the flag and spokes whose crossings are priced, close together near the flag and wide where few
 * balls stop.
 */
const RADII_M = [1, 1.8, 2.6, 3.6, 4.8, 6.2, 8, 10.5, 13.5, 17, 22, 28, 36, 48, 64, 90, 130, 200] as const;
const SPOKES = 24;
/** In sand, where a pace matters wherever the flag is: a square grid, metres apart. */
const SAND_APART_M = 2;
/** Steeper than this no ball stops in it, rise over run. */
const STEEPEST_SAND = 0.3;
/** So near to a place, as a share of the way to the next, that one alone counts: a stray ball is priced from fewer places. */
const ONE_ALONE = 0.2;
const SAND = coverCode('bunker');

/**
 * What the same engine says (`priceFrom`) at the four places around a ball, over what the tables say of cover and distance,
 * between them by straight lines in ring and spoke. So a price does not jump where the same cover goes on. Against 128 strikes
 * of each option from the very point a price misses by 0.075 strokes either way (mean over 20,000 finishes on the sample
 * course); of options as a whole, few of whose shots miss, it is 0.015, and 0.007 of the difference to the chosen one (root
 * mean square; straight lines all the way and 16 strikes by chance took half as many again for 0.008). Places are priced
 * when first asked for and do not depend on the order of asking, so that coarse and full answers share them.
 */
export function missPrices(
  player: PlayerRecord,
  map: GreenMap,
  shooterFrom: ShooterFrom,
  ground: SurveyedGround<Surface>,
): MissPrices {
  const places = new Map<number, PricedPlace>();
  const { flag } = map;
  const { level } = player;
  const { reads } = ground;
  const here = new Float64Array(4);
  const couldLieAt = (at: PlanePoint, sand: boolean): boolean => {
    ground.sample(Float64Array.of(at.eastM, at.northM), here);
    return sand === (here[3] === SAND) && (!sand || length2(here[1] ?? 0, here[2] ?? 0) < STEEPEST_SAND);
  };
  const priced = (at: PlanePoint, code: number): PricedPlace => {
    const looks = nothingRead(reads);
    const cover = covers[code] ?? DEFAULT_COVER;
    const { strokes, fits } = notedNow(reads, looks, () => ({
      strokes: priceFrom(player, map, shooterFrom, at, cover).strokes,
      fits: couldLieAt(at, code === SAND),
    }));
    const apart = length2(at.eastM - flag.eastM, at.northM - flag.northM);
    return {
      beyondTable: strokes - baselineStrokes(level, cover, apart),
      fits,
      looks: packed(looks),
      notedIn: null,
    };
  };
  /** A crossing by its numbers: of ring and spoke on grass, of column and row in sand. */
  const place = (i: number, j: number, code: number): PricedPlace => {
    const key = ((i + 4096) * 8192 + (j + 4096)) * 16 + code;
    let known = places.get(key);
    if (known === undefined) {
      const [radius, angle] = [RADII_M[i] ?? 1, (2 * Math.PI * j) / SPOKES];
      const [east, north] =
        code === SAND ? [i * SAND_APART_M, j * SAND_APART_M] : [radius * sin(angle), radius * cos(angle)];
      known = priced({ eastM: flag.eastM + east, northM: flag.northM + north }, code);
      places.set(key, known);
    }
    if (known.notedIn !== reads.into) {
      known.notedIn = reads.into;
      noteAgain(known.looks, reads.into);
    }
    return known;
  };
  /** Between four crossings, by the shares of the way to the further ones. */
  const between = (
    i: number,
    outwards: number,
    j: number,
    nextJ: number,
    onwards: number,
    code: number,
  ): number => {
    const [x, y] = [shareOfNext(outwards), shareOfNext(onwards)];
    let all = 0;
    let fitting = 0;
    let weights = 0;
    for (let k = 0; k < 4; k += 1) {
      const weight = ((k & 1) === 0 ? 1 - x : x) * ((k & 2) === 0 ? 1 - y : y);
      if (weight === 0) continue;
      const { beyondTable, fits } = place(i + (k & 1), (k & 2) === 0 ? j : nextJ, code);
      all += weight * beyondTable;
      if (!fits) continue;
      fitting += weight * beyondTable;
      weights += weight;
    }
    return weights > 0 ? fitting / weights : all;
  };
  return {
    at(eastM, northM, code) {
      const east = eastM - flag.eastM;
      const north = northM - flag.northM;
      const apart = length2(east, north);
      const table = baselineStrokes(level, covers[code] ?? DEFAULT_COVER, apart);
      if (code === SAND) {
        const [x, y] = [east / SAND_APART_M, north / SAND_APART_M];
        const [column, row] = [Math.floor(x), Math.floor(y)];
        return table + between(column, x - column, row, row + 1, y - row, code);
      }
      let outer = 1;
      while (outer < RADII_M.length - 1 && apart > (RADII_M[outer] ?? 0)) outer += 1;
      const inner = RADII_M[outer - 1] ?? 0;
      const out = Math.min(1, Math.max(0, (apart - inner) / ((RADII_M[outer] ?? 1) - inner)));
      const turn = SPOKES * (1 + atan2(east, north) / (2 * Math.PI));
      const spoke = Math.floor(turn);
      return table + between(outer - 1, out, spoke % SPOKES, (spoke + 1) % SPOKES, turn - spoke, code);
    },
  };
}

const shareOfNext = (way: number): number =>
  Math.min(1, Math.max(0, (way - ONE_ALONE) / (1 - 2 * ONE_ALONE)));
