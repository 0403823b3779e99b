import { round2 } from './element.ts';
import type { XY } from './view.ts';

/** Path data of rings (closed) or lines (open), two decimals. */
export function closedPath(rings: readonly (readonly XY[])[]): string {
  return rings.map((ring) => `${openPath(ring)}Z`).join('');
}

export function openPath(points: readonly XY[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round2(x)} ${round2(y)}`).join('');
}

export const segment = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${round2(x1)} ${round2(y1)}L${round2(x2)} ${round2(y2)}`;
