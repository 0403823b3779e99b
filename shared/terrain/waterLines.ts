import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { flatPolygon, insidePolygon } from './rings.ts';
import type { Surface } from './surface.ts';

const STEP_M = 0.2;
const LONGEST_M = 200;
/** Water stands on ground flatter than this (rise per metre): the line ends there. */
const STANDS_BELOW = 1e-4;

/**
 * Lines water runs along over an area: down the steepest slope, by midpoint steps, from seeds on a lattice, each until it
 * leaves the area, stands in a hollow, or comes within half a spacing of a line drawn before.
 */
export function waterLines(
  surface: Surface,
  area: PlanePolygon,
  spacingM: number,
): readonly (readonly PlanePoint[])[] {
  if (!(spacingM > 0)) throw new RangeError(`Water lines need a positive spacing, not ${String(spacingM)}.`);
  const outer = area[0];
  if (outer === undefined || outer.length < 3) return [];
  const polygon = flatPolygon(area);
  const west = Math.min(...outer.map((p) => p.eastM));
  const east = Math.max(...outer.map((p) => p.eastM));
  const south = Math.min(...outer.map((p) => p.northM));
  const north = Math.max(...outer.map((p) => p.northM));
  const out = new Float64Array(3);

  // Highest seeds first: their lines are the longest, and lower ones then join them.
  const seeds: { readonly eastM: number; readonly northM: number; readonly heightM: number }[] = [];
  for (let y = south + spacingM / 2; y < north; y += spacingM) {
    for (let x = west + spacingM / 2; x < east; x += spacingM) {
      if (!insidePolygon(polygon, x, y)) continue;
      surface.sampleHeight(x, y, out);
      seeds.push({ eastM: x, northM: y, heightM: out[0] as number });
    }
  }
  seeds.sort((a, b) => b.heightM - a.heightM || a.northM - b.northM || a.eastM - b.eastM);

  const cell = spacingM / 2;
  const taken = new Set<number>();
  const wide = Math.ceil((east - west) / cell) + 3;
  const cellOf = (x: number, y: number): number =>
    Math.floor((y - south) / cell) * wide + Math.floor((x - west) / cell);
  const lines: PlanePoint[][] = [];
  for (const seed of seeds) {
    if (taken.has(cellOf(seed.eastM, seed.northM))) continue;
    const line: PlanePoint[] = [{ eastM: seed.eastM, northM: seed.northM }];
    const own = new Set<number>([cellOf(seed.eastM, seed.northM)]);
    let { eastM: x, northM: y, heightM: height } = seed;
    for (let s = 0; s < LONGEST_M; s += STEP_M) {
      if (!downhill(surface, x, y, out)) break;
      const mx = x + (out[0] as number) * 0.5 * STEP_M;
      const my = y + (out[1] as number) * 0.5 * STEP_M;
      if (!downhill(surface, mx, my, out)) break;
      const nx = x + (out[0] as number) * STEP_M;
      const ny = y + (out[1] as number) * STEP_M;
      if (!insidePolygon(polygon, nx, ny)) break;
      surface.sampleHeight(nx, ny, out);
      const lower = out[0] as number;
      if (lower >= height) break; // the bottom of a hollow lies within this step
      x = nx;
      y = ny;
      height = lower;
      line.push({ eastM: x, northM: y });
      const here = cellOf(x, y);
      if (taken.has(here)) break;
      own.add(here);
    }
    for (const c of own) taken.add(c);
    if (line.length > 2) lines.push(line);
  }
  return lines;
}

/** Unit vector down the slope into out[0..1]; false where water would stand. */
function downhill(surface: Surface, x: number, y: number, out: Float64Array): boolean {
  surface.sampleHeight(x, y, out);
  const gx = out[1] as number;
  const gy = out[2] as number;
  const steepness = Math.sqrt(gx * gx + gy * gy);
  if (steepness < STANDS_BELOW) return false;
  out[0] = -gx / steepness;
  out[1] = -gy / steepness;
  return true;
}
