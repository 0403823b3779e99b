import type { Shape } from './shape.ts';
import type { Box } from './view.ts';

/** Whether any part of the shape's edge lies in a box. */
export function edgeCrosses({ box: own, edges }: Shape, box: Box): boolean {
  const [left, top, right, bottom] = [box.x, box.y, box.x + box.width, box.y + box.height];
  if (own.x > right || own.x + own.width < left || own.y > bottom || own.y + own.height < top) return false;
  for (let i = 0; i < edges.length; i += 4) {
    const [ax, ay, bx, by] = [edges[i], edges[i + 1], edges[i + 2], edges[i + 3]] as [
      number,
      number,
      number,
      number,
    ];
    if (Math.max(ax, bx) < left || Math.min(ax, bx) > right) continue;
    if (Math.max(ay, by) < top || Math.min(ay, by) > bottom) continue;
    // The sides' boxes meet: the edge misses the box only with all its corners on one side.
    const side = (x: number, y: number): number => Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax));
    const sides = side(left, top) + side(right, top) + side(left, bottom) + side(right, bottom);
    if (Math.abs(sides) < 4) return true;
  }
  return false;
}
