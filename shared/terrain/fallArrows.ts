import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { edgeDistance, flatPolygon } from './rings.ts';
import { slopeOfGradient } from './slope.ts';
import type { Surface } from './surface.ts';

/** An arrow down the slope, with its middle at a point. */
export interface FallArrow {
  readonly at: PlanePoint;
  readonly downhillBearingDeg: number;
  readonly slopePct: number;
  readonly lengthM: number;
}

/** Slopes under this read as level, percent. */
export const LEVEL_BELOW_PCT = 0.6;
/** An arrow as long as its spacing allows stands for this slope or more, percent. */
const FULL_LENGTH_PCT = 5;
const LONGEST_PER_SPACING = 0.9;
const SHORTEST_PER_SPACING = 0.3;

/**
 * Arrows at regular spacing over an area, on a lattice fixed to the plane (so they do not jump when the area is edited),
 * each as long as its slope; none on ground under 0.6 % or within a quarter spacing of the edge.
 */
export function fallArrows(surface: Surface, area: PlanePolygon, spacingM: number): FallArrow[] {
  if (!(spacingM > 0)) throw new RangeError(`Arrows need a positive spacing, not ${String(spacingM)}.`);
  const outer = area[0];
  if (outer === undefined || outer.length < 3) return [];
  const polygon = flatPolygon(area);
  const east = outer.map((p) => p.eastM);
  const north = outer.map((p) => p.northM);
  const out = new Float64Array(3);
  const arrows: FallArrow[] = [];
  for (let j = Math.ceil(Math.min(...north) / spacingM); j * spacingM <= Math.max(...north); j += 1) {
    for (let i = Math.ceil(Math.min(...east) / spacingM); i * spacingM <= Math.max(...east); i += 1) {
      const at = { eastM: i * spacingM, northM: j * spacingM };
      if (edgeDistance(polygon, at.eastM, at.northM) < spacingM / 4) continue;
      surface.sampleHeight(at.eastM, at.northM, out);
      const slope = slopeOfGradient(out[1] as number, out[2] as number);
      if (slope.slopePct < LEVEL_BELOW_PCT) continue;
      const share = Math.min(1, slope.slopePct / FULL_LENGTH_PCT);
      arrows.push({
        at,
        ...slope,
        lengthM: spacingM * (SHORTEST_PER_SPACING + (LONGEST_PER_SPACING - SHORTEST_PER_SPACING) * share),
      });
    }
  }
  return arrows;
}
