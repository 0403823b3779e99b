import type { TerrainArea } from '../terrain/terrainInput.ts';
import type { AreaKind } from '../words/vocabulary.ts';
import { paintOrder } from './ground.ts';
import type { LabelRequest } from './labels.ts';
import { deepestPoint, shapeOf } from './shape.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { PlateView } from './view.ts';
import { grown, overlaps, projection } from './view.ts';

/** Ground that its pattern names well enough. */
const unnamed: ReadonlySet<AreaKind> = new Set(['green', 'fringe', 'lightRough']);

/** Which names a map carries: all, or on small paper only of what a player must know by name. */
export type NamesShown = 'all' | 'penalties' | 'none';

/** Where the names of areas want to sit: on the deepest visible part of each, in italics. */
export function nameRequests(
  view: PlateView,
  style: PlateStyle,
  areas: readonly TerrainArea[],
  shown: NamesShown,
): LabelRequest[] {
  if (shown === 'none') return [];
  const { toDrawing } = projection(view);
  const drawn = areas.map((area) => ({ area, shape: shapeOf(area.polygon, toDrawing) }));
  return drawn.flatMap(({ area, shape }): LabelRequest[] => {
    if (area.name === '' || unnamed.has(area.kind)) return [];
    if (shown === 'penalties' && area.kind !== 'penaltyArea' && area.kind !== 'outOfBounds') return [];
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
        // A tree's name stands beside its trunk dot.
        away: area.kind === 'tree' ? 6 * style.symbolScale : 0,
        leader: false,
        // A name that fits inside its own area goes before one that must stand outside.
        priority: Math.min(40, spot.depth),
      },
    ];
  });
}
