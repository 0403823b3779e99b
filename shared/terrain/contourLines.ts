import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { boundingBox } from '../geometry/ring.ts';
import type { GridShape } from './hermiteGrid.ts';
import { isolines } from './isolines.ts';
import { type FlatPolygon, flatPolygon, insidePolygon } from './rings.ts';
import type { Surface } from './surface.ts';

/** A line of one height. A closed one does not repeat its first point. */
export interface ContourLine {
  readonly heightM: number;
  readonly points: readonly PlanePoint[];
  readonly closed: boolean;
}

/**
 * Contours of a surface at whole multiples of an interval, higher ground on the left (rings round a hill run counter-clockwise), clipped to an area where one is
 * given. The points lie on the surface's own grid, so with the usual 0.25 m they draw as smooth lines.
 */
export function contourLines(surface: Surface, intervalM: number, clip?: PlanePolygon): ContourLine[] {
  if (!(intervalM > 0))
    throw new RangeError(`A contour interval must be positive, not ${String(intervalM)}.`);
  const { shape, heightsM } =
    clip === undefined ? { shape: surface, heightsM: surface.heightsM } : cutOut(surface, clip);
  let low = Infinity;
  let high = -Infinity;
  for (const height of heightsM) {
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  const lines: ContourLine[] = [];
  for (let k = Math.ceil(low / intervalM); k * intervalM <= high; k += 1) {
    const heightM = k * intervalM;
    for (const line of isolines(shape, heightsM, heightM)) {
      if (clip === undefined) lines.push({ heightM, ...line });
      else {
        for (const part of clipLine(line.points, line.closed, clip)) lines.push({ heightM, ...part });
      }
    }
  }
  return lines;
}

/** The part of the grid about an area: the margin that a surface is fitted over is many times as large as its green. */
function cutOut(
  { heightsM, originEastM, originNorthM, cellM, columns, rows }: Surface,
  clip: PlanePolygon,
): { readonly shape: GridShape; readonly heightsM: Float64Array } {
  const box = boundingBox(clip.flat());
  const span = (from: number, to: number, origin: number, count: number): readonly [number, number] => {
    const first = Math.min(count - 1, Math.max(0, Math.floor((from - origin) / cellM) - 1));
    return [first, Math.max(first, Math.min(count - 1, Math.ceil((to - origin) / cellM) + 1))];
  };
  const [west, east] = box === null ? [0, 0] : span(box.westM, box.eastM, originEastM, columns);
  const [south, north] = box === null ? [0, 0] : span(box.southM, box.northM, originNorthM, rows);
  const shape = {
    originEastM: originEastM + west * cellM,
    originNorthM: originNorthM + south * cellM,
    cellM,
    columns: east - west + 1,
    rows: north - south + 1,
  };
  const cut = new Float64Array(shape.columns * shape.rows);
  for (let row = 0; row < shape.rows; row += 1) {
    const from = (south + row) * columns + west;
    cut.set(heightsM.subarray(from, from + shape.columns), row * shape.columns);
  }
  return { shape, heightsM: cut };
}

/** The parts of a line inside an area, cut at its edge to well under a millimetre. */
export function clipLine(
  points: readonly PlanePoint[],
  closed: boolean,
  clip: PlanePolygon,
): { readonly points: readonly PlanePoint[]; readonly closed: boolean }[] {
  const polygon = flatPolygon(clip);
  const inside = points.map((p) => insidePolygon(polygon, p.eastM, p.northM));
  if (inside.every((i) => i)) return [{ points, closed }];
  const outside = inside.indexOf(false);
  // A closed line is opened at a point outside, so that no part is cut in two where it happens to start.
  const order = closed
    ? [...points.keys(), 0].map((_, i) => (i + outside) % points.length)
    : [...points.keys()];
  const parts: { points: PlanePoint[]; closed: boolean }[] = [];
  let part: PlanePoint[] = [];
  const finish = (): void => {
    if (part.length >= 2) parts.push({ points: part, closed: false });
    part = [];
  };
  order.forEach((index, i) => {
    const at = points[index] as PlanePoint;
    const before = order[i - 1];
    if (before !== undefined && inside[before] !== inside[index]) {
      part.push(edgeBetween(polygon, points[before] as PlanePoint, at));
      if (inside[index] !== true) finish();
    }
    if (inside[index] === true) part.push(at);
  });
  finish();
  return parts;
}

function edgeBetween(polygon: FlatPolygon, a: PlanePoint, b: PlanePoint): PlanePoint {
  const aInside = insidePolygon(polygon, a.eastM, a.northM);
  let from = 0;
  let to = 1;
  const along = (t: number): PlanePoint => ({
    eastM: a.eastM + t * (b.eastM - a.eastM),
    northM: a.northM + t * (b.northM - a.northM),
  });
  for (let i = 0; i < 30; i += 1) {
    const t = (from + to) / 2;
    const p = along(t);
    if (insidePolygon(polygon, p.eastM, p.northM) === aInside) from = t;
    else to = t;
  }
  return along(aInside ? from : to);
}
