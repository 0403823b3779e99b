import { element, round2 } from './element.ts';
import { segment } from './pathData.ts';
import type { ScatterRequest } from './scatter.ts';
import { scatter } from './scatter.ts';
import type { Shape } from './shape.ts';
import { contains, distanceToEdge, spansAt, turnedShape } from './shape.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, XY } from './view.ts';

/** What every ground pattern is drawn from. */
export interface PatternContext {
  readonly shape: Shape;
  readonly style: PlateStyle;
  readonly clip: Box;
  /** Where the plane's origin lies on the drawing: patterns hang from it, so that they move with the ground. */
  readonly origin: XY;
  readonly seed: number;
  /** Names and marks that scattered symbols leave free. */
  readonly keepClear: readonly Box[];
  /** Ground painted over this one later: symbols do not straddle its edge. */
  readonly above: readonly Shape[];
  /** Only symbols that stand in this part of the drawing; all when left out. */
  readonly part?: Box;
}

const mostSymbols = 2600;

/** The part of a shape's box that is on the drawing, or null when none is. */
export function visibleBox(shape: Shape, clip: Box): Box | null {
  const x = Math.max(shape.box.x, clip.x);
  const y = Math.max(shape.box.y, clip.y);
  const width = Math.min(shape.box.x + shape.box.width, clip.x + clip.width) - x;
  const height = Math.min(shape.box.y + shape.box.height, clip.y + clip.height) - y;
  return width > 0 && height > 0 ? { x, y, width, height } : null;
}

/**
 * Visits scattered places of a shape where a symbol of half-width `reach` is whole: inside, clear of names and marks,
 * and not under other ground. `inset` is the least distance to the shape's own edge.
 */
export function scatterInside(
  context: PatternContext,
  options: { spacing: number; wander: number; reach: number; inset: number; most?: number },
  visit: (x: number, y: number, noise: (k: number) => number, edgeDistance: number) => void,
): void {
  const { shape, clip, origin, seed, keepClear, above } = context;
  const box = visibleBox(shape, clip);
  if (box === null) return;
  const part = context.part ?? box;
  // A part has its share of them all, so that parts side by side are as one.
  const share = (part.width * part.height) / (box.width * box.height);
  const request: ScatterRequest = {
    seed,
    spacing: options.spacing,
    wander: options.wander,
    left: part.x,
    top: part.y,
    right: part.x + part.width,
    bottom: part.y + part.height,
    originX: origin[0],
    originY: origin[1],
    most: (options.most ?? mostSymbols) * share,
  };
  const { reach } = options;
  scatter(request, (x, y, noise) => {
    if (!contains(shape, x, y)) return;
    for (const box of keepClear) {
      if (
        x > box.x - reach &&
        x < box.x + box.width + reach &&
        y > box.y - reach &&
        y < box.y + box.height + reach
      )
        return;
    }
    const edgeDistance = distanceToEdge(shape, x, y);
    if (edgeDistance < options.inset) return;
    for (const other of above) {
      const b = other.box;
      if (x < b.x - reach || x > b.x + b.width + reach || y < b.y - reach || y > b.y + b.height + reach)
        continue;
      if (contains(other, x, y) || distanceToEdge(other, x, y) < reach) return;
    }
    visit(x, y, noise, edgeDistance);
  });
}

/** A family of parallel dashes clipped to the shape, as path data. `dash` Infinity draws whole lines. */
export function hatch(
  context: PatternContext,
  options: { angleDeg: number; spacing: number; dash: number; gap: number },
): string {
  const { clip, origin, seed } = context;
  const angle = (options.angleDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const flat = options.angleDeg === 0 ? context.shape : turnedShape(context.shape, -angle);
  // The clip box in the turned frame is taken as the box around it: a little more is drawn than shows.
  const corners = [
    [clip.x, clip.y],
    [clip.x + clip.width, clip.y],
    [clip.x, clip.y + clip.height],
    [clip.x + clip.width, clip.y + clip.height],
  ].map(([x = 0, y = 0]): XY => [x * cos + y * sin, -x * sin + y * cos]);
  const clipLeft = Math.min(...corners.map(([x]) => x));
  const clipRight = Math.max(...corners.map(([x]) => x));
  const clipTop = Math.min(...corners.map(([, y]) => y));
  const clipBottom = Math.max(...corners.map(([, y]) => y));
  const originX = origin[0] * cos + origin[1] * sin;
  const originY = -origin[0] * sin + origin[1] * cos;
  const top = Math.max(flat.box.y, clipTop);
  const bottom = Math.min(flat.box.y + flat.box.height, clipBottom);
  const parts: string[] = [];
  const put = (x1: number, x2: number, y: number): void => {
    parts.push(segment(x1 * cos - y * sin, x1 * sin + y * cos, x2 * cos - y * sin, x2 * sin + y * cos));
  };
  const period = options.dash + options.gap;
  for (let row = Math.ceil((top - originY) / options.spacing); ; row += 1) {
    const y = originY + row * options.spacing;
    if (y > bottom) break;
    const spans = spansAt(flat, y);
    // Rows are staggered by a third and a little noise, so that no columns form.
    const stagger = Number.isFinite(period) ? (row % 3) * (period / 3) + ((seed >>> (row & 7)) & 1) * 0.7 : 0;
    for (let s = 0; s + 1 < spans.length; s += 2) {
      const from = Math.max(spans[s] ?? 0, clipLeft);
      const to = Math.min(spans[s + 1] ?? 0, clipRight);
      if (!Number.isFinite(period)) {
        if (to > from) put(from, to, y);
        continue;
      }
      const first = Math.floor((from - originX - stagger) / period);
      for (let i = first; ; i += 1) {
        const start = originX + stagger + i * period;
        if (start > to) break;
        const x1 = Math.max(start, from);
        const x2 = Math.min(start + options.dash, to);
        if (x2 - x1 > 0.8) put(x1, x2, y);
      }
    }
  }
  return parts.join('');
}

/** A stroked, unfilled path; null when there is nothing to draw. */
export function strokes(
  d: string,
  stroke: string,
  width: number,
  more: Readonly<Record<string, string | number>> = {},
): SvgNode | null {
  if (d === '') return null;
  return element('path', { d, fill: 'none', stroke, 'stroke-width': width, ...more });
}

export const dashes = (style: PlateStyle, ...lengths: readonly number[]): string =>
  lengths.map((length) => round2(length * style.symbolScale)).join(' ');
