import { lineString, simplify } from '@turf/turf';
import { planePoint, type PlanePoint, type PlaneRing } from './points.ts';

/** The line with corners left out that lie within `toleranceM` of what remains (Douglas and Peucker; its ends stay). */
export function simplifiedLine(points: readonly PlanePoint[], toleranceM: number): readonly PlanePoint[] {
  if (points.length < 3) return points;
  // Turf's simplification is flat: metres go in as they are.
  const flat = lineString(points.map(({ eastM, northM }) => [eastM, northM]));
  return simplify(flat, { tolerance: toleranceM, highQuality: true }).geometry.coordinates.map(
    ([east = NaN, north = NaN]) => planePoint(east, north),
  );
}

export function simplifiedRing(ring: PlaneRing, toleranceM: number): PlaneRing {
  const first = ring[0];
  if (first === undefined || ring.length < 5) return ring;
  // Halved at a far corner, since a line that ends where it begins has no length to measure from.
  let far = 0;
  let most = -1;
  ring.forEach((point, i) => {
    const [dx, dy] = [point.eastM - first.eastM, point.northM - first.northM];
    if (dx * dx + dy * dy > most) [far, most] = [i, dx * dx + dy * dy];
  });
  const there = simplifiedLine(ring.slice(0, far + 1), toleranceM);
  const back = simplifiedLine([...ring.slice(far), first], toleranceM);
  const kept = [...there.slice(0, -1), ...back.slice(0, -1)];
  return kept.length >= 3 ? kept : ring;
}
