import { bearingDeg, pointAlong } from '../../geometry/bearing.ts';
import type { PlanePoint, PlanePolygon } from '../../geometry/points.ts';
import { unionOf } from '../../geometry/topology.ts';
import { simplifiedLine } from '../../geometry/simplified.ts';

/** The ground a path of this width covers: a box along each stretch, joined. */
export function lineCorridor(line: readonly PlanePoint[], widthM: number): readonly PlanePolygon[] {
  const half = widthM / 2;
  const kept = simplifiedLine(line, 0.1);
  const boxes: PlanePolygon[] = [];
  kept.forEach((to, i) => {
    const from = kept[i - 1];
    if (from === undefined || (from.eastM === to.eastM && from.northM === to.northM)) return;
    const bearing = bearingDeg(from, to);
    // Each stretch runs on by half a width, so that corners are filled.
    const start = pointAlong(from, bearing + 180, half);
    const end = pointAlong(to, bearing, half);
    boxes.push([
      [
        pointAlong(start, bearing + 90, half),
        pointAlong(end, bearing + 90, half),
        pointAlong(end, bearing - 90, half),
        pointAlong(start, bearing - 90, half),
      ],
    ]);
  });
  return unionOf(boxes);
}
