import type { LocalFrame } from '../geometry/localFrame.ts';
import { planePoint, type PlanePoint } from '../geometry/points.ts';
import type { ElevationGrid } from './records.ts';

export interface GridNode {
  readonly at: PlanePoint;
  /** In the atlas's own datum. */
  readonly heightM: number;
}

/**
 * The nodes of a grid that have a height, in the plane. Between the corners they are spread evenly both ways, which holds
 * to some millimetres over the few hundred metres an atlas keeps of any elevation model.
 */
export function gridNodes(grid: ElevationGrid, frame: LocalFrame): GridNode[] {
  const [sw, se, ne, nw] = (grid.corners[0] ?? []).map(frame.toPlane);
  if (sw === undefined || se === undefined || ne === undefined || nw === undefined) return [];
  const nodes: GridNode[] = [];
  grid.heightsM.forEach((heightM, i) => {
    if (heightM === null) return;
    const column = i % grid.columns;
    const u = column / (grid.columns - 1);
    const v = (i - column) / grid.columns / (grid.rows - 1);
    const between = (of: (corner: PlanePoint) => number): number =>
      (1 - v) * ((1 - u) * of(sw) + u * of(se)) + v * ((1 - u) * of(nw) + u * of(ne));
    nodes.push({
      at: planePoint(
        between((corner) => corner.eastM),
        between((corner) => corner.northM),
      ),
      heightM: heightM + grid.datumShiftM,
    });
  });
  return nodes;
}
