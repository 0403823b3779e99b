import type { TerrainArea } from '../terrain/terrainInput.ts';
import { paintOrder } from './ground.ts';
import type { LabelRequest } from './labels.ts';
import { deepestPoint, shapeOf } from './shape.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { PlateView } from './view.ts';
import { grown, overlaps, projection } from './view.ts';

/** Where the names of areas want to sit: on the deepest visible part of each, in italics. */
export function nameRequests(
  view: PlateView,
  style: PlateStyle,
  areas: readonly TerrainArea[],
): LabelRequest[] {
  const { toDrawing } = projection(view);
  const drawn = areas.map((area) => ({ area, shape: shapeOf(area.polygon, toDrawing) }));
  return drawn.flatMap(({ area, shape }): LabelRequest[] => {
    if (area.name === '' || area.kind === 'green') return [];
    const rank = paintOrder.indexOf(area.kind);
    const above = drawn
      .filter((other) => paintOrder.indexOf(other.area.kind) > rank && overlaps(other.shape.box, shape.box))
      .map((other) => other.shape);
    const spot = deepestPoint(shape, grown(view.box, -4), above);
    if (spot === null) return [];
    return [
      {
        text: area.name,
        at: spot.at,
        size: textSize(style, 15),
        face: 'serifItalic',
        weight: 400,
        ink: style.inks.ink2,
        away: 0,
        leader: false,
        // A name that fits inside its own area goes before one that must stand outside.
        priority: Math.min(40, spot.depth),
      },
    ];
  });
}
