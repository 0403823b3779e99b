import { expect, it } from 'vitest';
import { drawGround } from '../../../shared/plate/ground.ts';
import { screenStyle } from '../../../shared/plate/style.ts';
import { planePoint } from '../../../shared/geometry/points.ts';
import type { TerrainArea } from '../../../shared/terrain/terrainInput.ts';

const area = (
  id: string,
  kind: TerrainArea['kind'],
  east: number,
  north: number,
  size: number,
): TerrainArea => ({
  ...{ id, kind, name: '', lipHeightM: 0.4, treeHeightM: 8, canopyBaseM: 2 },
  polygon: [
    Array.from({ length: 16 }, (_, i) =>
      planePoint(east + size * Math.cos((i * Math.PI) / 8), north + size * Math.sin((i * Math.PI) / 8)),
    ),
  ],
});

it('draws after every edit what it would draw of the same ground for the first time', () => {
  const view = {
    centre: planePoint(0, 0),
    unitsPerM: 6,
    upBearingDeg: 0,
    box: { x: 0, y: 0, width: 460, height: 340 },
  };
  const style = screenStyle('survey', 1);
  const clear = { x: 200, y: 70, width: 60, height: 20 };
  let areas: readonly TerrainArea[] = [
    area('rough', 'heavyRough', -20, 10, 14),
    area('fairway', 'fairway', 18, -8, 16),
    area('fringe', 'fringe', 0, 0, 13),
    area('green', 'green', 0, 0, 11),
    area('bunker', 'bunker', 14, 8, 4),
    area('bare', 'bare', -24, 10, 5),
  ];
  const edits: readonly ((before: readonly TerrainArea[]) => readonly TerrainArea[])[] = [
    (before) => before,
    (before) => before.map((one) => (one.id === 'green' ? area('green', 'green', 1, 0, 10) : one)),
    (before) => before.filter(({ id }) => id !== 'bare'),
    (before) => [...before, area('tree', 'tree', -18, 6, 5)],
    (before) => before.map((one) => (one.id === 'bunker' ? area('bunker', 'bunker', -20, 12, 4) : one)),
  ];
  for (const edit of edits) {
    areas = edit(areas);
    for (const keepClear of [[clear], [{ ...clear, x: 80 }]])
      expect(drawGround(view, style, { areas, base: 'lightRough', keepClear })).toEqual(
        drawGround(view, style, { areas: structuredClone(areas), base: 'lightRough', keepClear }),
      );
  }
});
