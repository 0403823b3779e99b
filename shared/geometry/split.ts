import { bearingDeg, pointAlong } from './bearing.ts';
import { planePoint, type PlanePoint, type PlanePolygon } from './points.ts';
import { boundingBox, distanceM, polygonAreaM2 } from './ring.ts';
import { selfIntersection } from './selfIntersection.ts';
import { differenceOf, overlapOf } from './topology.ts';

/**
 * The parts a line cuts a polygon into, largest first; the polygon alone where the line does not cross it from edge to
 * edge or crosses itself. The line's ends are carried on straight, so it need only reach the edge.
 */
export function splitPolygon(polygon: PlanePolygon, line: readonly PlanePoint[]): readonly PlanePolygon[] {
  const [first, second] = line;
  const last = line[line.length - 1];
  const before = line[line.length - 2];
  const box = boundingBox([...(polygon[0] ?? []), ...line]);
  if (
    first === undefined ||
    second === undefined ||
    last === undefined ||
    before === undefined ||
    box === null
  )
    return [polygon];
  const middle = planePoint((box.westM + box.eastM) / 2, (box.southM + box.northM) / 2);
  const reachM = 2 * distanceM(middle, planePoint(box.eastM, box.northM)) + 1;
  const from = pointAlong(first, bearingDeg(second, first), reachM);
  const to = pointAlong(last, bearingDeg(before, last), reachM);
  // Back round one side, far outside the polygon.
  const startDeg = bearingDeg(middle, to);
  const sweepDeg = (((bearingDeg(middle, from) - startDeg) % 360) + 360) % 360;
  const steps = 12;
  const round = Array.from({ length: steps - 1 }, (_, i) =>
    pointAlong(middle, startDeg + (sweepDeg * (i + 1)) / steps, 3 * reachM),
  );
  const side = [from, ...line, to, ...round];
  if (selfIntersection(side) !== null) return [polygon];
  const parts = [...overlapOf(polygon, [side]), ...differenceOf(polygon, [side])];
  return parts.length < 2 ? [polygon] : parts.sort((a, b) => polygonAreaM2(b) - polygonAreaM2(a));
}
