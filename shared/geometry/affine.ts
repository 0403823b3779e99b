import { planePoint, type PlanePoint } from './points.ts';

/** An even map from a sheet (x to the right, y up, in any unit) to the plane: east = ax + by + c, north = dx + ey + f. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** A point of a sheet. */
export interface SheetPoint {
  readonly x: number;
  readonly y: number;
}

export const sameAsSheet: Affine = { a: 1, b: 0, c: 0, d: 0, e: 1, f: 0 };

export const onPlane = (m: Affine, { x, y }: SheetPoint): PlanePoint =>
  planePoint(m.a * x + m.b * y + m.c, m.d * x + m.e * y + m.f);

/** Area of the plane that a unit of the sheet takes; negative where the sheet lies on its face. */
export const areaScale = (m: Affine): number => m.a * m.e - m.b * m.d;

/** The point of the sheet that lies at a point of the plane; null for a sheet without area. */
export function onSheet(m: Affine, { eastM, northM }: PlanePoint): SheetPoint | null {
  const scale = areaScale(m);
  if (scale === 0) return null;
  const east = eastM - m.c;
  const north = northM - m.f;
  return { x: (m.e * east - m.b * north) / scale, y: (m.a * north - m.d * east) / scale };
}

/** The map moved over the plane by so many metres. */
export const movedAffine = (m: Affine, eastM: number, northM: number): Affine => ({
  ...m,
  c: m.c + eastM,
  f: m.f + northM,
});

/**
 * The map turned and enlarged about a point of the plane: east, north from `centre` become cos·east + sin·north,
 * cos·north - sin·east. For a turn clockwise by an angle at scale k give k·cos and k·sin of it.
 */
export function turnedAffine(m: Affine, centre: PlanePoint, cos: number, sin: number): Affine {
  const east = m.c - centre.eastM;
  const north = m.f - centre.northM;
  return {
    a: cos * m.a + sin * m.d,
    b: cos * m.b + sin * m.e,
    c: centre.eastM + cos * east + sin * north,
    d: cos * m.d - sin * m.a,
    e: cos * m.e - sin * m.b,
    f: centre.northM + cos * north - sin * east,
  };
}
