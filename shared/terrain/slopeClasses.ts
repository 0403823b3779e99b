import type { PlanePolygon, PlaneRing } from '../geometry/points.ts';
import { gridOver } from './hermiteGrid.ts';
import { isolines } from './isolines.ts';
import { edgeDistance, flatPolygon } from './rings.ts';
import type { Surface } from './surface.ts';

/** Ground at least this steep, as rings to be filled by the even-odd rule. */
export interface SlopeClass {
  readonly fromPct: number;
  readonly rings: readonly PlaneRing[];
}

/** Thresholds people who set holes think in, percent. */
export const usualSlopeClassesPct: readonly number[] = [1, 2, 3, 4];

const CELL_M = 0.25;
/** Slope counted for each metre outside the area when it is cut to shape, percent: steep enough to cut on the edge itself. */
const CUT_PCT_PER_M = 4;

/** Where an area is at least as steep as each threshold, cut to the area's own edge. Each class contains the next. */
export function slopeClasses(
  surface: Surface,
  area: PlanePolygon,
  thresholdsPct: readonly number[] = usualSlopeClassesPct,
): SlopeClass[] {
  const outer = area[0];
  if (outer === undefined || outer.length < 3)
    return thresholdsPct.map((fromPct) => ({ fromPct, rings: [] }));
  const east = outer.map((p) => p.eastM);
  const north = outer.map((p) => p.northM);
  const margin = 2 * CELL_M;
  const shape = gridOver(
    {
      westM: Math.min(...east) - margin,
      southM: Math.min(...north) - margin,
      eastM: Math.max(...east) + margin,
      northM: Math.max(...north) + margin,
    },
    CELL_M,
  );
  const polygon = flatPolygon(area);
  const slopes = new Float64Array(shape.columns * shape.rows);
  const inward = new Float64Array(slopes.length);
  const out = new Float64Array(3);
  for (let i = 0; i < slopes.length; i += 1) {
    const column = i % shape.columns;
    const eastM = shape.originEastM + column * shape.cellM;
    const northM = shape.originNorthM + ((i - column) / shape.columns) * shape.cellM;
    surface.sampleHeight(eastM, northM, out);
    const gx = out[1] as number;
    const gy = out[2] as number;
    slopes[i] = 100 * Math.sqrt(gx * gx + gy * gy);
    inward[i] = CUT_PCT_PER_M * edgeDistance(polygon, eastM, northM);
  }
  return thresholdsPct.map((fromPct) => {
    // Both conditions at once: as steep as asked and inside. The margin is outside, so every line closes.
    const both = slopes.map((slope, i) => Math.min(slope - fromPct, inward[i] as number));
    return {
      fromPct,
      rings: isolines(shape, both, 0)
        .filter((line) => line.points.length >= 3)
        .map((line) => line.points),
    };
  });
}
