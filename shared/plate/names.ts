import type { TerrainArea } from '../terrain/terrainInput.ts';
import type { AreaKind } from '../words/vocabulary.ts';
import { paintOrder } from './ground.ts';
import type { LabelRequest } from './labels.ts';
import { LastMade } from './lastMade.ts';
import { edgeCrosses } from './edgeCrosses.ts';
import { contains, deepestPoint, type Shape } from './shape.ts';
import { shapeIn } from './shapeIn.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { Box, PlateView, XY } from './view.ts';
import { boxContains, grown, overlaps, projectionKey } from './view.ts';

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
  const drawn = areas.map((area) => ({ area, shape: shapeIn(view, area.polygon) }));
  const strong = drawn.filter(({ area }) => strongEdges.has(area.kind)).map(({ shape }) => shape);
  const { x, y, width, height } = view.box;
  const place = [projectionKey(view), x, y, width, height].join(' ');
  return drawn.flatMap(({ area, shape }): LabelRequest[] => {
    if (area.name === '' || unnamed.has(area.kind)) return [];
    if (shown === 'penalties' && area.kind !== 'penaltyArea' && area.kind !== 'outOfBounds') return [];
    const rank = paintOrder.indexOf(area.kind);
    const above = drawn
      .filter((other) => paintOrder.indexOf(other.area.kind) > rank && overlaps(other.shape.box, shape.box))
      .map((other) => other.shape);
    const spot = spotsBefore.get(area, [place, ...above], () =>
      deepestPoint(shape, grown(view.box, -4), above),
    );
    if (spot === null) return [];
    const size = textSize(style, 15);
    return [
      {
        text: area.name,
        at: spot.at,
        size,
        face: 'serifItalic',
        weight: 400,
        ink: style.inks.ink2,
        // A tree's name stands beside its trunk dot.
        away: area.kind === 'tree' ? 6 * style.symbolScale : 0,
        leader: false,
        shuns: (box) => strong.some((edge) => edgeCrosses(edge, box)),
        suits: truthful(area.kind, shape, above, spot.at, spot.depth + 1.4 * size),
        // A name that fits inside its own area goes before one that must stand outside.
        priority: Math.min(40, spot.depth),
      },
    ];
  });
}

const spotsBefore = new LastMade<TerrainArea, ReturnType<typeof deepestPoint>>();

/** Ground whose edge a name should not lie across. */
const strongEdges: ReadonlySet<AreaKind> = new Set(['green', 'bunker', 'penaltyArea', 'outOfBounds']);

/** A name that cannot be missed on a map: it may stand anywhere near. */
const needed: ReadonlySet<AreaKind> = new Set(['penaltyArea', 'outOfBounds']);
/** Ground wide enough to carry its own name: on a neighbour the name would be untrue. */
const wide: ReadonlySet<AreaKind> = new Set(['approach', 'fairway', 'heavyRough']);

/** Whether a name in a place tells the truth: on its own ground, or close beside something small. */
function truthful(
  kind: AreaKind,
  shape: Shape,
  above: readonly Shape[],
  [x, y]: XY,
  near: number,
): (box: Box) => boolean {
  if (needed.has(kind)) return () => true;
  if (wide.has(kind))
    return (box) => {
      const middleX = box.x + box.width / 2;
      const middleY = box.y + box.height / 2;
      return contains(shape, middleX, middleY) && !above.some((other) => contains(other, middleX, middleY));
    };
  return (box) => boxContains(grown(box, near), [x, y]);
}
