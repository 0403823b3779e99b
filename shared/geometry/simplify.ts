import { lineString, polygon, simplify } from '@turf/turf';
import { planePoint, type PlanePoint, type PlaneRing } from './points.ts';

/**
 * Fewer points for a stroke drawn by hand: none of those left out is further than the tolerance from the line kept
 * (Douglas and Peucker 1973, by turf, which works on plane metres as they are). The ends stay.
 */
export function simplifiedLine(points: readonly PlanePoint[], toleranceM: number): readonly PlanePoint[] {
  if (points.length < 3) return points;
  const kept = simplify(lineString(points.map(({ eastM, northM }) => [eastM, northM])), {
    tolerance: toleranceM,
    highQuality: true,
  });
  return kept.geometry.coordinates.map(([x = NaN, y = NaN]) => planePoint(x, y));
}

/** The same for a closed stroke; never fewer than three corners where it has as many. */
export function simplifiedRing(ring: PlaneRing, toleranceM: number): PlaneRing {
  const first = ring[0];
  if (first === undefined || ring.length < 5) return ring;
  const closed = [...ring, first].map(({ eastM, northM }) => [eastM, northM]);
  const kept = simplify(polygon([closed]), { tolerance: toleranceM, highQuality: true });
  return (kept.geometry.coordinates[0] ?? []).slice(0, -1).map(([x = NaN, y = NaN]) => planePoint(x, y));
}
