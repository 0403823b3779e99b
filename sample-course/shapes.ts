import { planePoint, type PlanePoint } from '../shared/geometry/points.ts';
import type { ComplexArea, FromGreen } from './complex.ts';
import { beyondEdge, type Blob, type Wave } from './outline.ts';

/** Short hands for laying out a complex. */
export const p = (rightM: number, beyondM: number): PlanePoint => planePoint(rightM, beyondM);

const GENTLE: readonly Wave[] = [
  { count: 3, share: 0.07, crestDeg: 35 },
  { count: 2, share: 0.05, crestDeg: 80 },
];

export function blob(
  middle: PlanePoint,
  halfWidthM: number,
  halfLengthM: number,
  turnDeg = 0,
  waves: readonly Wave[] = GENTLE,
): Blob {
  return { middle, halfWidthM, halfLengthM, turnDeg, waves };
}

/** A bunker with its long side along the edge of the green. */
export function bunker(
  green: Blob,
  name: string,
  [bearing, beyondM]: FromGreen,
  acrossM: number,
  alongM: number,
  lipHeightM: number,
): ComplexArea {
  const middle = beyondEdge(green, bearing, beyondM);
  const waves: readonly Wave[] = [
    { count: 2, share: 0.06, crestDeg: bearing },
    { count: 3, share: 0.09, crestDeg: 2 * bearing },
  ];
  return {
    kind: 'bunker',
    name,
    shape: { blob: blob(middle, acrossM / 2, alongM / 2, bearing + 90, waves) },
    lipHeightM,
  };
}

export function tree(
  name: string,
  middle: PlanePoint,
  crownM: number,
  treeHeightM: number,
  canopyBaseM: number,
): ComplexArea {
  const waves: readonly Wave[] = [{ count: 7, share: 0.05, crestDeg: middle.eastM * 10 }];
  return {
    kind: 'tree',
    name,
    shape: { blob: blob(middle, crownM, crownM * 0.95, 20, waves) },
    treeHeightM,
    canopyBaseM,
  };
}

export const around = (
  kind: ComplexArea['kind'],
  name: string,
  ...knots: readonly FromGreen[]
): ComplexArea => ({
  kind,
  name,
  shape: { around: knots },
});

export const patch = (kind: ComplexArea['kind'], name: string, shape: Blob): ComplexArea => ({
  kind,
  name,
  shape: { blob: shape },
});

export const path = (name: string, widthM: number, ...knots: readonly PlanePoint[]): ComplexArea => ({
  kind: 'path',
  name,
  shape: { bandAlong: knots, widthM },
});

export const corners = (
  kind: ComplexArea['kind'],
  name: string,
  ...points: readonly PlanePoint[]
): ComplexArea => ({
  kind,
  name,
  shape: { corners: points },
});
