import { length2 } from '../numeric/elementary.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { type Affine, areaScale, onPlane, type SheetPoint } from './affine.ts';
import type { PlanePoint } from './points.ts';

/** A point of a sheet whose place on the plane is known. */
export interface KnownPoint {
  readonly on: SheetPoint;
  readonly at: PlanePoint;
}

/** How far the sheet may give: only move and turn, also grow or shrink, or also stretch and lean. */
export type FitKind = 'rigid' | 'similar' | 'affine';

export interface SheetFit {
  readonly affine: Affine;
  /** How far each point comes to lie from its known place, in their order. */
  readonly missesM: readonly number[];
  /** Root of the mean square of the misses; null where as few points leave nothing to miss. */
  readonly rmsM: number | null;
}

/** Points that spread less than this across their longest direction, as a share of it, are as good as in one line. */
const LEAST_BREADTH = 0.02;

/**
 * Least squares over known points: two for `rigid` and `similar` (which then misses nothing), three for `affine`; more are
 * evened out. `rigid` and `similar` after the closed solution of the plane (the regression of the targets on the points as
 * complex numbers), `affine` by the normal equations about the means.
 * @throws InputProblem for too few points, points in one place or in one line, and a sheet that would lie on its face.
 */
export function fitSheet(points: readonly KnownPoint[], kind: FitKind): SheetFit {
  const least = kind === 'affine' ? 3 : 2;
  if (points.length < least)
    throw new InputProblem(
      'too-few-points',
      `${String(points.length)} known points do not settle it.`,
      '',
      `Give ${least === 2 ? 'two' : 'three'} or more.`,
    );
  const n = points.length;
  let x0 = 0;
  let y0 = 0;
  let east0 = 0;
  let north0 = 0;
  for (const { on, at } of points) {
    x0 += on.x / n;
    y0 += on.y / n;
    east0 += at.eastM / n;
    north0 += at.northM / n;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xEast = 0;
  let yEast = 0;
  let xNorth = 0;
  let yNorth = 0;
  let spreadM2 = 0;
  for (const { on, at } of points) {
    const x = on.x - x0;
    const y = on.y - y0;
    const east = at.eastM - east0;
    const north = at.northM - north0;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xEast += x * east;
    yEast += y * east;
    xNorth += x * north;
    yNorth += y * north;
    spreadM2 += east * east + north * north;
  }
  if (xx + yy === 0 || spreadM2 === 0)
    throw new InputProblem(
      'points-in-one-place',
      'The known points lie in one place.',
      '',
      'Take points far from each other.',
    );
  const about = ({ a, b, d, e }: Omit<Affine, 'c' | 'f'>): Affine => ({
    ...{ a, b, d, e },
    c: east0 - a * x0 - b * y0,
    f: north0 - d * x0 - e * y0,
  });
  if (kind !== 'affine') {
    const along = xEast + yNorth;
    const across = xNorth - yEast;
    const scale = kind === 'similar' ? xx + yy : length2(along, across);
    if (scale === 0) throw onItsFace();
    const c = along / scale;
    const s = across / scale;
    return missed(points, about({ a: c, b: -s, d: s, e: c }), kind === 'similar' ? 2 : 1);
  }
  // Eigenvalues of the spread of the points: its square root is how broad they lie.
  const determinant = xx * yy - xy * xy;
  const longest = (xx + yy + Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / 2;
  if (determinant < LEAST_BREADTH * LEAST_BREADTH * longest * longest)
    throw new InputProblem(
      'points-in-line',
      'The known points lie in one line, which leaves open how the picture is stretched across it.',
      '',
      'Take a third point well away from the line through the others.',
    );
  const affine = about({
    a: (xEast * yy - yEast * xy) / determinant,
    b: (yEast * xx - xEast * xy) / determinant,
    d: (xNorth * yy - yNorth * xy) / determinant,
    e: (yNorth * xx - xNorth * xy) / determinant,
  });
  if (areaScale(affine) <= 0) throw onItsFace();
  return missed(points, affine, 3);
}

/** @param settled how many points the map follows exactly */
function missed(points: readonly KnownPoint[], affine: Affine, settled: number): SheetFit {
  const missesM = points.map(({ on, at }) => {
    const here = onPlane(affine, on);
    return length2(here.eastM - at.eastM, here.northM - at.northM);
  });
  const meanSquare = missesM.reduce((sum, miss) => sum + miss * miss, 0) / points.length;
  return { affine, missesM, rmsM: points.length <= settled ? null : Math.sqrt(meanSquare) };
}

const onItsFace = (): InputProblem =>
  new InputProblem(
    'points-mirrored',
    'So placed, it would lie on its face, as in a mirror.',
    '',
    'Two of the known points are mixed up: take out one and give it again.',
  );
