import { coverCode, covers, type Cover, type Moisture } from '../words/vocabulary.ts';
import { METRES_PER_FOOT, STIMP_RELEASE_MPS } from './constants.ts';
import type { Conditions } from './shot.ts';

/**
 * How each cover slows, bounces and grips, for one day. Only the green speed is measured; every other cover is given as
 * a Stimpmeter equivalent, which nobody publishes: fringe 6 to 7 and fairway 4 to 6 ft are the assumed spans of the
 * outside table, the rest is assumed in proportion. The turf constants are those of `bounce.ts`.
 */
interface CoverTraits {
  /** Stimpmeter equivalent when dry, feet; the green has the day's own. */
  readonly stimpFt: number;
  /** Share of the dry figure left when wet; half of the loss when damp. Assumed. */
  readonly wetShare: number;
  /** Added to the day's firmness (0 to 1). Assumed. */
  readonly firmer: number;
  /** Factor on the restitution of close turf. Assumed. */
  readonly liveliness: number;
  /** Factor on the tilt of the crater face. Assumed. */
  readonly tilt: number;
  /** Sliding friction of the ball on it when dry. */
  readonly friction: number;
}

const traits: Readonly<Record<Cover, CoverTraits>> = {
  green: { stimpFt: 10, wetShare: 1, firmer: 0, liveliness: 1, tilt: 1, friction: 0.4 },
  fringe: { stimpFt: 6.5, wetShare: 0.88, firmer: 0, liveliness: 1, tilt: 1, friction: 0.4 },
  approach: { stimpFt: 6, wetShare: 0.88, firmer: 0, liveliness: 1, tilt: 1, friction: 0.4 },
  fairway: { stimpFt: 5, wetShare: 0.85, firmer: 0, liveliness: 0.97, tilt: 1, friction: 0.4 },
  lightRough: { stimpFt: 2.4, wetShare: 0.75, firmer: -0.1, liveliness: 0.7, tilt: 1.3, friction: 0.45 },
  heavyRough: { stimpFt: 1.1, wetShare: 0.7, firmer: -0.15, liveliness: 0.42, tilt: 1.6, friction: 0.5 },
  bare: { stimpFt: 8, wetShare: 0.75, firmer: 0.35, liveliness: 1.05, tilt: 0.8, friction: 0.45 },
  bunker: { stimpFt: 0.9, wetShare: 1.3, firmer: 0, liveliness: 0.25, tilt: 1.5, friction: 0.6 },
  penaltyArea: { stimpFt: 0.5, wetShare: 1, firmer: 0, liveliness: 0, tilt: 1, friction: 0.5 },
  outOfBounds: { stimpFt: 2.4, wetShare: 1, firmer: 0, liveliness: 0.7, tilt: 1, friction: 0.4 },
  path: { stimpFt: 14, wetShare: 0.95, firmer: 0.5, liveliness: 1.35, tilt: 0, friction: 0.4 },
  tee: { stimpFt: 5.5, wetShare: 0.87, firmer: 0, liveliness: 1, tilt: 1, friction: 0.4 },
};

const wetness: Readonly<Record<Moisture, number>> = { dry: 0, damp: 0.5, wet: 1 };

/** Per cover code, a column each: what the hot loops read. */
export interface CoverTable {
  /** Deceleration of a ball rolling on the level, m/s^2. */
  readonly rollingMps2: Float64Array;
  /** Restitution at no speed, see `bounce`. */
  readonly restitution: Float64Array;
  /** Tilt of the crater face at the calibration impact, radians. */
  readonly tiltRad: Float64Array;
  readonly friction: Float64Array;
}

/** Deceleration on the level from a Stimpmeter reading: v0^2 / 2S. */
export const rollingFromStimp = (stimpFt: number): number =>
  (STIMP_RELEASE_MPS * STIMP_RELEASE_MPS) / (2 * stimpFt * METRES_PER_FOOT);

/**
 * The span of firmness is assumed, not published: restitution 0.51 +- 0.08 and tilt 15.4 -+ 6 degrees from soft to firm
 * about Penner's middle (2002, "The run of a golf ball"; from memory). Water softens by 0.15 and takes a quarter of the
 * friction (assumed). Soft sand plugs the ball: restitution falls to nothing below firmness 0.4 unless it is wet.
 */
export function coverTable(conditions: Conditions): CoverTable {
  const table: CoverTable = {
    rollingMps2: new Float64Array(covers.length),
    restitution: new Float64Array(covers.length),
    tiltRad: new Float64Array(covers.length),
    friction: new Float64Array(covers.length),
  };
  const wet = wetness[conditions.moisture];
  for (const cover of covers) {
    const t = traits[cover];
    const code = coverCode(cover);
    const stimpFt = cover === 'green' ? conditions.stimpFt : t.stimpFt * (1 + (t.wetShare - 1) * wet);
    const firmness = Math.min(1, Math.max(0, conditions.firmness + t.firmer - 0.15 * wet));
    table.rollingMps2[code] = rollingFromStimp(stimpFt);
    table.restitution[code] = t.liveliness * (0.51 + 0.16 * (firmness - 0.5));
    table.tiltRad[code] = (t.tilt * (15.4 - 12 * (firmness - 0.5)) * Math.PI) / 180;
    table.friction[code] = t.friction * (1 - 0.25 * wet);
  }
  const sand = coverCode('bunker');
  const packed = Math.min(1, Math.max(0, conditions.firmness + 0.3 * wet));
  table.restitution[sand] = packed < 0.4 ? 0 : 0.3 * (packed - 0.4);
  return table;
}
