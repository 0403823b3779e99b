import type { PlanePoint } from '../geometry/points.ts';
import { element, group } from './element.ts';
import { plainText } from './labels.ts';
import { dashes } from './pattern.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView, XY } from './view.ts';
import { projection } from './view.ts';

/** A ball position or a hole location as drawn. Round is a ball, square is a flag. */
export interface PlaceMark {
  readonly id: string;
  readonly label: string;
  readonly at: PlanePoint;
  readonly chosen: boolean;
}

export interface Marks {
  readonly flags: readonly PlaceMark[];
  readonly balls: readonly PlaceMark[];
}

const ballRadius = (style: PlateStyle, chosen: boolean): number =>
  Math.max((chosen ? 12 : 10.5) * style.symbolScale, style.leastText * 0.7);
const tagSize = (style: PlateStyle): number => Math.max(17 * style.symbolScale, style.leastText * 1.2);
const staff = (style: PlateStyle): number => 10 * style.symbolScale;

/** Where a ball's circle is drawn: on its place, or at the edge of the map nearest to it when it lies beyond. */
function ballPlace(view: PlateView, style: PlateStyle, ball: PlaceMark): { at: XY; beyond: boolean } {
  const [x, y] = projection(view).toDrawing(ball.at);
  const r = ballRadius(style, ball.chosen) + 4 * style.symbolScale;
  const { box } = view;
  const at: XY = [
    Math.min(Math.max(x, box.x + r), box.x + box.width - r),
    Math.min(Math.max(y, box.y + r), box.y + box.height - r),
  ];
  return { at, beyond: Math.hypot(at[0] - x, at[1] - y) > r };
}

/** Whether any ball lies so far out that its circle stands at the edge of the map, drawn dashed. */
export const anyBallBeyond = (view: PlateView, style: PlateStyle, balls: readonly PlaceMark[]): boolean =>
  balls.some((ball) => ballPlace(view, style, ball).beyond);

/** Boxes the marks cover, for names and patterns to keep clear of. */
export function markBoxes(view: PlateView, style: PlateStyle, marks: Marks): Box[] {
  const { toDrawing } = projection(view);
  const balls = marks.balls.map((ball) => {
    const [x, y] = ballPlace(view, style, ball).at;
    const r = ballRadius(style, ball.chosen) + (ball.chosen ? 5 : 2) * style.symbolScale;
    return { x: x - r, y: y - r, width: 2 * r, height: 2 * r };
  });
  const flags = marks.flags.map((flag) => {
    const [x, y] = toDrawing(flag.at);
    const tag = tagSize(style);
    const k = style.symbolScale;
    return {
      x: x - 5 * k,
      y: y - staff(style) - tag,
      width: tag + 6 * k,
      height: tag + staff(style) + 5 * k,
    };
  });
  return [...balls, ...flags];
}

/** A ball: circle with its number; filled when chosen, with an outer ring. */
export function ballMark(
  [x, y]: XY,
  label: string,
  chosen: boolean,
  style: PlateStyle,
  beyond = false,
): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const r = ballRadius(style, chosen);
  const size = Math.max(13.5 * k * (label.length > 2 ? 0.78 : 1), style.leastText);
  return group(
    'ball',
    element('circle', { cx: x, cy: y, r: r + (chosen ? 3.6 * k : 1.2 * k), fill: inks.halo }),
    chosen
      ? element('circle', {
          cx: x,
          cy: y,
          r: r + 2.8 * k,
          fill: inks.halo,
          stroke: inks.ink,
          'stroke-width': 1.4 * k,
        })
      : null,
    element('circle', {
      cx: x,
      cy: y,
      r: r - (chosen ? 0.4 * k : 0),
      fill: chosen ? inks.ink : inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1.5 * k,
      'stroke-dasharray': beyond ? dashes(style, 4, 3) : undefined,
    }),
    plainText(label, x, y + size * 0.36, {
      size,
      weight: 700,
      ink: chosen ? inks.sheet : inks.ink,
      anchor: 'middle',
    }),
  );
}

/** A flag: ring, staff, square tag with its letter; filled when chosen. */
export function flagMark([x, y]: XY, label: string, chosen: boolean, style: PlateStyle): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const tag = tagSize(style);
  const top = y - staff(style) - tag;
  const ring = (chosen ? 4.2 : 3.1) * k;
  return group(
    'flag',
    element('line', {
      x1: x,
      y1: y - ring,
      x2: x,
      y2: top,
      stroke: inks.halo,
      'stroke-width': 4 * k,
    }),
    element('circle', { cx: x, cy: y, r: ring + 1.4 * k, fill: inks.halo }),
    element('circle', {
      cx: x,
      cy: y,
      r: ring,
      fill: chosen ? inks.ink : inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1.9 * k,
    }),
    element('line', { x1: x, y1: y - ring, x2: x, y2: top, stroke: inks.ink, 'stroke-width': 1.9 * k }),
    flagTag([x - 0.9 * k, top], label, chosen, style),
  );
}

/** The square tag of a flag, from its top left corner. */
export function flagTag([x, y]: XY, label: string, chosen: boolean, style: PlateStyle): SvgNode {
  const { inks } = style;
  const tag = tagSize(style);
  const size = Math.max(13 * style.symbolScale * (label.length > 1 ? 0.8 : 1), style.leastText);
  return group(
    'tag',
    element('rect', {
      x,
      y,
      width: tag,
      height: tag,
      fill: chosen ? inks.ink : inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1.6 * style.symbolScale,
    }),
    plainText(label, x + tag / 2, y + tag / 2 + size * 0.36, {
      size,
      weight: 700,
      ink: chosen ? inks.sheet : inks.ink,
      anchor: 'middle',
    }),
  );
}

/** A landing ring: where to land it. */
export function landingRing([x, y]: XY, ink: string, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  return group(
    'landing',
    element('circle', { cx: x, cy: y, r: 5.6 * k, fill: style.inks.halo }),
    element('circle', {
      cx: x,
      cy: y,
      r: 4.2 * k,
      fill: style.inks.sheet,
      stroke: ink,
      'stroke-width': 2 * k,
    }),
    style.mono ? element('circle', { cx: x, cy: y, r: 1.5 * k, fill: ink }) : null,
  );
}

/** All flags and balls; the chosen ones last, on top. */
export function drawMarks(view: PlateView, style: PlateStyle, marks: Marks): SvgNode {
  const { toDrawing } = projection(view);
  const chosenLast = (list: readonly PlaceMark[]): PlaceMark[] =>
    [...list].sort((a, b) => Number(a.chosen) - Number(b.chosen));
  const held = (kind: string, mark: PlaceMark, node: SvgNode): SvgNode =>
    element('g', { 'data-part': kind, 'data-id': mark.id }, node);
  return group(
    'marks',
    ...chosenLast(marks.balls).map((mark) => {
      const { at, beyond } = ballPlace(view, style, mark);
      return held('ball-mark', mark, ballMark(at, mark.label, mark.chosen, style, beyond));
    }),
    ...chosenLast(marks.flags).map((mark) =>
      held('flag-mark', mark, flagMark(toDrawing(mark.at), mark.label, mark.chosen, style)),
    ),
  );
}
