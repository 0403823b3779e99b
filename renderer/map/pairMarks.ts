import { distanceM } from '../../shared/geometry/ring.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { element, group } from '../../shared/plate/element.ts';
import { plainText } from '../../shared/plate/labels.ts';
import { openPath, segment } from '../../shared/plate/pathData.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { XY } from '../../shared/plate/view.ts';

/** A point of what is being placed, and where it is known to be. */
export interface PointPair {
  readonly label: string;
  readonly from: PlanePoint;
  /** Null until it is given. */
  readonly to: PlanePoint | null;
}

/** Known points: a cross where one lies now, a ring with its number where it should, and a line where they part. */
export function pairMarks(
  toDrawing: (at: PlanePoint) => XY,
  style: PlateStyle,
  pairs: readonly PointPair[],
): SvgNode {
  const { inks, symbolScale: k } = style;
  return group(
    'pairs',
    ...pairs.flatMap(({ label, from, to }) => {
      const [x, y] = toDrawing(from);
      const arm = 6 * k;
      const cross = `${segment(x - arm, y - arm, x + arm, y + arm)}${segment(x - arm, y + arm, x + arm, y - arm)}`;
      const [cx, cy] = to === null ? [x, y] : toDrawing(to);
      return [
        to === null || distanceM(from, to) < 0.01
          ? null
          : element('path', {
              d: openPath([
                [x, y],
                [cx, cy],
              ]),
              stroke: inks.select,
              'stroke-width': 1.6 * k,
              'stroke-dasharray': `${4 * k} ${3 * k}`,
            }),
        element('path', { d: cross, stroke: inks.halo, 'stroke-width': 5 * k }),
        element('path', { d: cross, stroke: inks.select, 'stroke-width': 2 * k }),
        ...(to === null
          ? []
          : [
              element('circle', { cx, cy, r: 9 * k, fill: 'none', stroke: inks.halo, 'stroke-width': 5 * k }),
              element('circle', {
                cx,
                cy,
                r: 9 * k,
                fill: 'none',
                stroke: inks.select,
                'stroke-width': 2 * k,
              }),
            ]),
        element('rect', {
          ...{ x: cx + 10 * k, y: cy - 22 * k, width: 19 * k, height: 18 * k, rx: 3 },
          fill: inks.select,
        }),
        plainText(label, cx + 15 * k, cy - 8.5 * k, { size: 13 * k, weight: 700, ink: inks.sheet }),
      ];
    }),
  );
}
