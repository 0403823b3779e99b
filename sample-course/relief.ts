import type { PlanePoint } from '../shared/geometry/points.ts';
import { type Blob, rayFrom } from './outline.ts';

/** The lie of the land of one invented complex, as formulas: heights follow from it, never the other way round. */
export interface Relief {
  readonly datumM: number;
  /** The overall fall, percent, and the bearing in which it goes. */
  readonly fallPct: number;
  readonly fallBearing: number;
  /** Swells (positive) and dips (negative). */
  readonly swells: readonly {
    readonly at: PlanePoint;
    readonly heightM: number;
    readonly reachM: number;
  }[];
  /** Longer dips, as a valley along a straight line. */
  readonly valleys: readonly {
    readonly from: PlanePoint;
    readonly to: PlanePoint;
    readonly depthM: number;
    readonly halfWidthM: number;
  }[];
  /** The step of a two-tier green: the ground beyond a line is higher. */
  readonly tier: {
    readonly through: PlanePoint;
    /** Bearing from the lower to the upper tier. */
    readonly upBearing: number;
    readonly riseM: number;
    readonly rampM: number;
    /** How much the foot of the ramp bows towards the lower tier away from its middle, per metre squared. */
    readonly bow: number;
  } | null;
  /** Ground falling (positive) or rising (negative) away from the edge of the green. */
  readonly banks: readonly {
    readonly bearing: number;
    readonly spreadDeg: number;
    readonly dropM: number;
    readonly fromM: number;
    readonly toM: number;
  }[];
}

const RAD = Math.PI / 180;

export function heightAt(relief: Relief, green: Blob, point: PlanePoint): number {
  const { eastM: x, northM: y } = point;
  const along = (bearing: number): number => x * Math.sin(bearing * RAD) + y * Math.cos(bearing * RAD);
  let height = relief.datumM - (relief.fallPct / 100) * along(relief.fallBearing);
  for (const { at, heightM, reachM } of relief.swells)
    height += heightM * Math.exp(-((x - at.eastM) ** 2 + (y - at.northM) ** 2) / (2 * reachM ** 2));
  for (const { from, to, depthM, halfWidthM } of relief.valleys)
    height -= depthM * Math.exp(-((distanceToLine(point, from, to) / halfWidthM) ** 2));
  if (relief.tier !== null) height += relief.tier.riseM * smooth(tierShare(relief, point));
  const { bearing, beyondM } = rayFrom(green, point);
  for (const bank of relief.banks) {
    const off = ((((bearing - bank.bearing) % 360) + 540) % 360) - 180;
    const here = Math.exp(-((off / bank.spreadDeg) ** 2));
    height -= bank.dropM * here * smooth((beyondM - bank.fromM) / (bank.toM - bank.fromM));
  }
  return height;
}

/** Share of the way up the ramp of the tier: 0 at its foot, 1 at its crest. */
export function tierShare({ tier }: Relief, { eastM, northM }: PlanePoint): number {
  if (tier === null) return 0;
  const x = eastM - tier.through.eastM;
  const y = northM - tier.through.northM;
  const up = x * Math.sin(tier.upBearing * RAD) + y * Math.cos(tier.upBearing * RAD);
  const across = x * Math.cos(tier.upBearing * RAD) - y * Math.sin(tier.upBearing * RAD);
  return (up + tier.bow * across ** 2) / tier.rampM;
}

/** The fall at a point, percent, and its bearing, by central differences over 2 cm. */
export function fallAt(
  relief: Relief,
  green: Blob,
  { eastM, northM }: PlanePoint,
): { slopePct: number; bearing: number } {
  const h = 0.01;
  const east =
    (heightAt(relief, green, { eastM: eastM + h, northM }) -
      heightAt(relief, green, { eastM: eastM - h, northM })) /
    (2 * h);
  const north =
    (heightAt(relief, green, { eastM, northM: northM + h }) -
      heightAt(relief, green, { eastM, northM: northM - h })) /
    (2 * h);
  return {
    slopePct: 100 * Math.hypot(east, north),
    bearing: (Math.atan2(-east, -north) / RAD + 360) % 360,
  };
}

function smooth(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * t * (t * (6 * t - 15) + 10);
}

function distanceToLine(p: PlanePoint, a: PlanePoint, b: PlanePoint): number {
  const dx = b.eastM - a.eastM;
  const dy = b.northM - a.northM;
  const t = Math.min(
    1,
    Math.max(0, ((p.eastM - a.eastM) * dx + (p.northM - a.northM) * dy) / (dx * dx + dy * dy)),
  );
  return Math.hypot(p.eastM - a.eastM - t * dx, p.northM - a.northM - t * dy);
}
