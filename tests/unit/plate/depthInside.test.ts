import { expect, it } from 'vitest';
import { depthInside } from '../../../shared/plate/depthInside.ts';
import { contains, distanceToEdge, shapeFromRings } from '../../../shared/plate/shape.ts';
import type { XY } from '../../../shared/plate/view.ts';

const around = (cx: number, cy: number, radius: number, waves: number): XY[] =>
  Array.from({ length: 90 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 90;
    const r = radius * (1 + 0.25 * Math.sin(waves * angle));
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });

it('tells the depth that measuring every side tells, with an island in the water and its shore off the drawing', () => {
  const shape = shapeFromRings([around(100, 80, 90, 5), around(120, 70, 22, 3)]);
  const grid = { x: 60, y: 20, cell: 2.5, columns: 70, rows: 60 };
  const depths = depthInside(shape, grid);
  let worst = 0;
  for (let j = 0; j < grid.rows; j += 1) {
    for (let i = 0; i < grid.columns; i += 1) {
      const [x, y] = [grid.x + i * grid.cell, grid.y + j * grid.cell];
      const depth = distanceToEdge(shape, x, y) * (contains(shape, x, y) ? 1 : -1);
      worst = Math.max(worst, Math.abs(depth - (depths[j * grid.columns + i] ?? NaN)));
    }
  }
  expect(worst).toBeLessThan(0.1 * grid.cell);
});
