import { coverPrecedence } from '../terrain/coverRaster.ts';
import type { TerrainArea } from '../terrain/terrainInput.ts';
import { planePoint } from '../geometry/points.ts';
import type { AreaKind } from '../words/vocabulary.ts';
import { element, group } from './element.ts';
import {
  approachPattern,
  barePattern,
  fairwayPattern,
  fringePattern,
  heavyRoughPattern,
  lightRoughPattern,
} from './grassPatterns.ts';
import {
  bunkerPattern,
  outOfBoundsPattern,
  penaltyAreaPattern,
  teePattern,
  treePattern,
} from './hazardPatterns.ts';
import { LastMade } from './lastMade.ts';
import { closedPath } from './pathData.ts';
import type { PatternContext } from './pattern.ts';
import { dashes, visibleBox } from './pattern.ts';
import { seedOf } from './scatter.ts';
import type { Shape } from './shape.ts';
import { shapeFromRings } from './shape.ts';
import { shapeIn } from './shapeIn.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView, XY } from './view.ts';
import { grown, overlaps, projection, projectionKey } from './view.ts';

/** Which ground covers which, lowest first; the same order a ball meets it in, with tree crowns over all. */
export const paintOrder: readonly AreaKind[] = [...coverPrecedence, 'tree'];

export interface GroundDrawing {
  readonly areas: readonly TerrainArea[];
  /** What lies where nothing is traced: light rough, or the blank sheet of a drawing just begun. */
  readonly base: 'lightRough' | 'blank';
  /** Boxes of names and marks, which scattered symbols leave free. */
  readonly keepClear: readonly Box[];
}

interface DrawnArea {
  readonly area: TerrainArea;
  readonly shape: Shape;
}

/** The ground of a plate: each area's tint, pattern and edge, in paint order, with patterns sized in drawing units. */
export function drawGround(view: PlateView, style: PlateStyle, ground: GroundDrawing): SvgNode {
  const { toDrawing } = projection(view);
  const origin = toDrawing(planePoint(0, 0));
  const clip = grown(view.box, 2);
  const drawn: DrawnArea[] = ground.areas
    .map((area) => ({ area, shape: shapeIn(view, area.polygon) }))
    .filter(({ shape }) => shape.rings.length > 0 && visibleBox(shape, clip) !== null)
    .sort((a, b) => paintOrder.indexOf(a.area.kind) - paintOrder.indexOf(b.area.kind));
  const greens = drawn.filter(({ area }) => area.kind === 'green').map(({ shape }) => shape);
  const context = (
    shape: Shape,
    seed: number,
    above: readonly Shape[],
    keepClear = ground.keepClear,
  ): PatternContext => ({ shape, style, clip, origin, seed, keepClear, above });
  const place = `${projectionKey(view)} ${boxKey(view.box)}`;
  const parts: SvgNode[] = [];
  if (ground.base === 'lightRough') {
    const whole = shapeFromRings([cornersOf(clip)]);
    parts.push(
      group(
        'base',
        element('path', { d: closedPath(whole.rings), fill: style.inks.fills.lightRough }),
        ...tilesOf(clip).map(({ key, tile }) => {
          const room = grown(tile, SYMBOL_REACH);
          const above = drawn.filter(({ shape }) => overlaps(shape.box, room));
          const keepClear = ground.keepClear.filter((other) => overlaps(other, room));
          const of = [style, place, boxesKey(keepClear), ...above.map(({ area }) => area)];
          return baseBefore.get(key, of, () => {
            const shapes = above.map(({ shape }) => shape);
            return group(
              'tufts',
              ...lightRoughPattern({
                ...context(whole, seedOf('base'), shapes, keepClear),
                part: tile,
              }),
            );
          });
        }),
      ),
    );
  }
  drawn.forEach(({ area, shape }, index) => {
    const above = drawn.slice(index + 1).filter((other) => overlaps(other.shape.box, shape.box));
    const room = grown(shape.box, SYMBOL_REACH);
    const keepClear = ground.keepClear.filter((other) => overlaps(other, room));
    // The fringe has its ticks along the greens.
    const beside = area.kind === 'fringe' ? drawn.filter((other) => other.area.kind === 'green') : [];
    const of = [style, place, boxesKey(keepClear), ...[...above, ...beside].map((other) => other.area)];
    parts.push(
      drawnBefore.get(area, of, () => {
        const shapes = above.map((other) => other.shape);
        return drawArea(area, context(shape, seedOf(area.id), shapes, keepClear), greens);
      }),
    );
  });
  return group('ground', ...parts);
}

/** Symbols reach at most so far beyond the place they stand at, drawing units. */
const SYMBOL_REACH = 60;

const drawnBefore = new LastMade<TerrainArea, SvgNode>();
const baseBefore = new LastMade<object, SvgNode>();

/** What lies under everything is drawn in squares, so that an edit draws anew only those it touches; drawing units. */
const TILE = 256;
const tileKeys: object[] = [];

function tilesOf({ x, y, width, height }: Box): readonly { readonly key: object; readonly tile: Box }[] {
  const columns = Math.ceil(width / TILE);
  return Array.from({ length: columns * Math.ceil(height / TILE) }, (_, i) => {
    const left = x + (i % columns) * TILE;
    const top = y + Math.floor(i / columns) * TILE;
    const tile = {
      x: left,
      y: top,
      width: Math.min(TILE, x + width - left),
      height: Math.min(TILE, y + height - top),
    };
    return { key: (tileKeys[i] ??= {}), tile };
  });
}

const boxKey = ({ x, y, width, height }: Box): string => `${x} ${y} ${width} ${height}`;
const boxesKey = (boxes: readonly Box[]): string => boxes.map(boxKey).join(' ');
const cornersOf = ({ x, y, width, height }: Box): readonly XY[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** One area by itself: also what swatches are made of. */
export function drawArea(area: TerrainArea, context: PatternContext, greens: readonly Shape[]): SvgNode {
  const { shape, style } = context;
  const { inks } = style;
  const k = style.symbolScale;
  const d = closedPath(shape.rings);
  const fill = element('path', { d, fill: inks.fills[area.kind], 'fill-rule': 'evenodd' });
  const edge = (stroke: string, width: number, dash?: string): SvgNode =>
    element('path', {
      d,
      fill: 'none',
      stroke,
      'stroke-width': width * k,
      'stroke-dasharray': dash,
      'stroke-linejoin': 'round',
    });
  const parts = ((): (SvgNode | null)[] => {
    switch (area.kind) {
      case 'green':
        return [fill, edge(inks.ink, 2)];
      case 'fringe':
        return [fill, ...fringePattern(context, greens), edge(inks.mown, 1.1)];
      case 'approach':
        return [fill, ...approachPattern(context), edge(inks.mown, 1)];
      case 'fairway':
        return [fill, ...fairwayPattern(context), edge(inks.mown, 1)];
      case 'lightRough':
        return [fill, ...lightRoughPattern(context)];
      case 'heavyRough':
        return [fill, ...heavyRoughPattern(context), edge(inks.tall, 1, dashes(style, 6, 4))];
      case 'bare':
        return [fill, ...barePattern(context), edge(inks.sand, 1.1, dashes(style, 1.4, 3.4))];
      case 'bunker':
        return [fill, ...bunkerPattern(context, area.lipHeightM), edge(inks.ink, 1.4)];
      case 'penaltyArea':
        return [fill, ...penaltyAreaPattern(context), edge(inks.ink, 1.5, dashes(style, 9, 4, 2, 4))];
      case 'outOfBounds':
        return [fill, ...outOfBoundsPattern(context), edge(inks.ink, 2.4, dashes(style, 14, 4, 3, 4))];
      case 'path':
        return [fill, edge(inks.tall, 0.95)];
      case 'tree':
        return treePattern(context);
      case 'tee':
        return [fill, ...teePattern(context), edge(inks.ink, 1.2)];
    }
  })();
  return element('g', { 'data-kind': area.kind, 'data-id': area.id }, ...parts);
}
