import { pointAlong } from '../../geometry/bearing.ts';
import { boxAbout } from '../../geometry/box.ts';
import { planePoint, type PlanePoint } from '../../geometry/points.ts';
import { distanceM, nearestOnRing, pointInPolygon } from '../../geometry/ring.ts';
import type { PlaneIndex } from '../planeIndex.ts';
import type { PlaneShape } from '../planeShape.ts';
import type { AreaRecord } from '../records.ts';

/** So far from the outline of what a ball is moved out of. */
const BEYOND_M = 0.3;
/** Rings of places are tried this far apart and out to the reach. */
const STEP_M = 0.5;
const REACH_M = 60;
const BEARINGS = 24;

const noBall = ['tree', 'penaltyArea', 'outOfBounds'] as const;

/** Whether a ball is not to lie on ground of this kind. */
export const isNoBall = (kind: AreaRecord['kind']): kind is (typeof noBall)[number] =>
  (noBall as readonly string[]).includes(kind);

/** The areas a ball at a place should not be in. */
export const aroundBall = (index: PlaneIndex, at: PlanePoint): readonly PlaneShape<AreaRecord>[] =>
  index
    .areasIn(boxAbout(at, 0))
    .filter(({ record, polygon }) => isNoBall(record.kind) && pointInPolygon(at, polygon));

/** A place near by where a ball is in none of them: just beyond the nearest outline if that will do; null where none is near. */
export function clearPlace(index: PlaneIndex, at: PlanePoint): PlanePoint | null {
  const clear = (place: PlanePoint): boolean => aroundBall(index, place).length === 0;
  const justBeyond = aroundBall(index, at)
    .map(({ polygon }) => beyond(at, polygon[0] ?? [at]))
    .filter(clear)
    .toSorted((a, b) => distanceM(at, a) - distanceM(at, b))[0];
  if (justBeyond !== undefined) return justBeyond;
  for (let radiusM = STEP_M; radiusM <= REACH_M; radiusM += STEP_M)
    for (let i = 0; i < BEARINGS; i += 1) {
      const place = pointAlong(at, (360 * i) / BEARINGS, radiusM);
      // With a little room, or it would stand on an outline.
      if (clear(place) && clear(pointAlong(at, (360 * i) / BEARINGS, radiusM - BEYOND_M / 2))) return place;
    }
  return null;
}

function beyond(at: PlanePoint, outline: readonly PlanePoint[]): PlanePoint {
  const { at: edge, distanceM: distance } = nearestOnRing(at, outline);
  const share = (distance + BEYOND_M) / Math.max(distance, 1e-6);
  return planePoint(
    at.eastM + (edge.eastM - at.eastM) * share,
    at.northM + (edge.northM - at.northM) * share,
  );
}
