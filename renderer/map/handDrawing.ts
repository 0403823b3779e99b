import type { PlanePoint, PlanePolygon } from '../../shared/geometry/points.ts';
import { element, group } from '../../shared/plate/element.ts';
import { plainText, textWidth } from '../../shared/plate/labels.ts';
import { closedPath, openPath, segment } from '../../shared/plate/pathData.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { type Box, type PlateView, projection, type XY } from '../../shared/plate/view.ts';
import { labelPlace } from './labelPlace.ts';
import { type GroupDrawing, groupMark, turnerMark } from './groupMark.ts';
import { pairMarks, type PointPair } from './pairMarks.ts';

/** What the hand shows over the plate, in blue. */
export interface HandDrawing {
  /** The outline or line being drawn; the last point is where the next corner would go. */
  readonly sketch: {
    readonly corners: readonly PlanePoint[];
    readonly next: PlanePoint | null;
    /** On the way to it along an outline. */
    readonly along?: readonly PlanePoint[];
    readonly stroke: readonly PlanePoint[];
    readonly closed: boolean;
  } | null;
  /** The thing held: its outline, handles where it can be changed, the corner chosen. */
  readonly held: {
    readonly polygon: PlanePolygon;
    readonly closed: boolean;
    readonly handles: boolean;
    readonly corner: { readonly ring: number; readonly index: number } | null;
    readonly turner: boolean;
    /** Without a wash, so that what is below can be judged. */
    readonly bare?: boolean;
  } | null;
  /** Several things held, instead of `held` and `point`. */
  readonly group: GroupDrawing | null;
  /** A held point, or one that waits for its value and is marked by a cross. */
  readonly point: { readonly at: PlanePoint; readonly waits: boolean } | null;
  /** Known points of what is being placed. */
  readonly pairs?: readonly PointPair[];
  readonly cursor: PlanePoint | null;
  readonly snap: PlanePoint | null;
  /** Something pointed out: a dashed ring. */
  readonly pointedOut: { readonly at: PlanePoint; readonly ink: 'alert' | 'doubt' } | null;
  /** Lines of the ink label; the first is bold. */
  readonly label: { readonly at: PlanePoint; readonly lines: readonly string[] } | null;
}

export const emptyHand: HandDrawing = {
  sketch: null,
  held: null,
  group: null,
  point: null,
  cursor: null,
  snap: null,
  pointedOut: null,
  label: null,
};

const HANDLE = 9;
const SHOWN_MIDDLES_PX = 30;

export function drawHand(whole: PlateView, visible: Box, style: PlateStyle, hand: HandDrawing): SvgNode {
  const view = { ...whole, box: visible };
  const { toDrawing } = projection(view);
  return group(
    'hand',
    hand.held === null ? null : heldThing(toDrawing, style, hand.held),
    hand.group === null ? null : groupMark(toDrawing, style, hand.group),
    hand.sketch === null ? null : sketched(toDrawing, style, hand.sketch),
    hand.point === null ? null : heldPoint(toDrawing(hand.point.at), hand.point.waits, style),
    hand.pointedOut === null
      ? null
      : ring(toDrawing(hand.pointedOut.at), style.inks[hand.pointedOut.ink], style),
    hand.pairs === undefined ? null : pairMarks(toDrawing, style, hand.pairs),
    hand.snap === null ? null : snapMark(toDrawing(hand.snap), style),
    hand.cursor === null ? null : crosshair(toDrawing(hand.cursor), style),
    hand.label === null
      ? null
      : inkLabel(toDrawing(hand.label.at), hand.label.lines, visible, style, drawnLines(toDrawing, hand)),
  );
}

type ToDrawing = (point: PlanePoint) => XY;

function sketched(
  toDrawing: ToDrawing,
  style: PlateStyle,
  sketch: NonNullable<HandDrawing['sketch']>,
): SvgNode {
  const { inks, symbolScale: k } = style;
  const corners = sketch.corners.map(toDrawing);
  const stroke = sketch.stroke.map(toDrawing);
  const tip = sketch.next === null ? [] : [...(sketch.along ?? []), sketch.next].map(toDrawing);
  const line = [...corners, ...stroke, ...(stroke.length > 0 ? [] : tip)];
  const first = line[0];
  const last = line.at(-1);
  const closing = sketch.closed && line.length >= 3 && first !== undefined && last !== undefined;
  return group(
    'sketch',
    sketch.closed && line.length >= 3
      ? element('path', { d: closedPath([line]), fill: inks.select, 'fill-opacity': 0.14 })
      : null,
    line.length < 2
      ? null
      : element('path', {
          d: openPath(line),
          fill: 'none',
          stroke: inks.select,
          'stroke-width': 2 * k,
          'stroke-linejoin': 'round',
        }),
    closing
      ? element('path', {
          d: openPath([last, first]),
          fill: 'none',
          stroke: inks.select,
          'stroke-width': 1.6 * k,
          'stroke-dasharray': `${5 * k} ${4 * k}`,
        })
      : null,
    ...corners.map((at, i) => square(at, style, i === 0)),
  );
}

function heldThing(toDrawing: ToDrawing, style: PlateStyle, held: NonNullable<HandDrawing['held']>): SvgNode {
  const { inks, symbolScale: k } = style;
  const rings = held.polygon.map((corners) => corners.map(toDrawing));
  const outer = rings[0] ?? [];
  const d = held.closed ? closedPath(rings) : openPath(outer);
  const middles = rings.flatMap((corners) =>
    corners.flatMap((a, i): XY[] => {
      const b = corners[i + 1] ?? (held.closed ? corners[0] : undefined);
      if (b === undefined || Math.hypot(a[0] - b[0], a[1] - b[1]) < SHOWN_MIDDLES_PX) return [];
      return [[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]];
    }),
  );
  const top = Math.min(...outer.map(([, y]) => y));
  const xs = outer.map(([x]) => x);
  const middleX = (Math.min(...xs) + Math.max(...xs)) / 2;
  return group(
    'held',
    element('path', {
      d,
      fill: held.closed && held.bare !== true ? inks.select : 'none',
      'fill-opacity': 0.1,
      'fill-rule': 'evenodd',
      stroke: inks.halo,
      'stroke-width': 5 * k,
      'stroke-opacity': 0.7,
    }),
    element('path', {
      d,
      fill: 'none',
      stroke: inks.select,
      'stroke-width': 2 * k,
      'stroke-linejoin': 'round',
    }),
    held.turner && outer.length > 0 ? turnerMark([middleX, top], style) : null,
    ...(held.handles
      ? [
          ...middles.map(([cx, cy]) =>
            element('circle', {
              cx,
              cy,
              r: 3 * k,
              fill: inks.sheet,
              stroke: inks.select,
              'stroke-width': 1.3 * k,
            }),
          ),
          ...rings.flatMap((corners, ringIndex) =>
            corners.map((at, index) =>
              square(at, style, held.corner?.ring === ringIndex && held.corner.index === index),
            ),
          ),
        ]
      : []),
  );
}

function square([x, y]: XY, style: PlateStyle, filled: boolean): SvgNode {
  const size = HANDLE * style.symbolScale;
  return element('rect', {
    'data-part': 'corner',
    x: x - size / 2,
    y: y - size / 2,
    width: size,
    height: size,
    fill: filled ? style.inks.select : style.inks.sheet,
    stroke: style.inks.select,
    'stroke-width': 1.8 * style.symbolScale,
  });
}

function heldPoint([cx, cy]: XY, waits: boolean, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  const shared = { cx, cy, r: 11 * k, fill: 'none' };
  return group(
    'held-point',
    element('circle', { ...shared, stroke: style.inks.halo, 'stroke-width': 5 * k, 'stroke-opacity': 0.7 }),
    element('circle', { ...shared, stroke: style.inks.select, 'stroke-width': 2 * k }),
    waits
      ? element('path', {
          d: `${segment(cx - 4 * k, cy, cx + 4 * k, cy)}${segment(cx, cy - 4 * k, cx, cy + 4 * k)}`,
          stroke: style.inks.select,
          'stroke-width': 1.6 * k,
        })
      : null,
  );
}

function ring([cx, cy]: XY, ink: string, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  return group(
    'pointed-out',
    element('circle', { cx, cy, r: 17 * k, fill: 'none', stroke: style.inks.halo, 'stroke-width': 4.5 * k }),
    element('circle', {
      cx,
      cy,
      r: 17 * k,
      fill: 'none',
      stroke: ink,
      'stroke-width': 2.6 * k,
      'stroke-dasharray': `${5 * k} ${3.5 * k}`,
    }),
  );
}

function snapMark([cx, cy]: XY, style: PlateStyle): SvgNode {
  return element('circle', {
    'data-part': 'snap',
    cx,
    cy,
    r: 7,
    fill: 'none',
    stroke: style.inks.select,
    'stroke-width': 2,
  });
}

function crosshair([x, y]: XY, style: PlateStyle): SvgNode {
  const arm = 11 * style.symbolScale;
  const d = openPath([
    [x - arm, y],
    [x + arm, y],
  ]).concat(
    openPath([
      [x, y - arm],
      [x, y + arm],
    ]),
  );
  return group(
    'cursor',
    element('path', { d, stroke: style.inks.halo, 'stroke-width': 5 }),
    element('path', { d, stroke: style.inks.ink, 'stroke-width': 1.8 }),
    element('circle', { cx: x, cy: y, r: 4, fill: 'none', stroke: style.inks.ink, 'stroke-width': 1.6 }),
  );
}

/** What is being drawn or pulled, as lines that the label keeps off. */
function drawnLines(toDrawing: ToDrawing, { sketch, held }: HandDrawing): readonly (readonly XY[])[] {
  if (sketch !== null) {
    const tip = sketch.next === null ? [] : [...(sketch.along ?? []), sketch.next];
    const line = [...sketch.corners, ...sketch.stroke, ...(sketch.stroke.length > 0 ? [] : tip)];
    return [(sketch.closed ? [...line, ...line.slice(0, 1)] : line).map(toDrawing)];
  }
  if (held === null) return [];
  return held.polygon.map((ring) => (held.closed ? [...ring, ...ring.slice(0, 1)] : ring).map(toDrawing));
}

function inkLabel(
  at: XY,
  lines: readonly string[],
  within: Box,
  style: PlateStyle,
  keepOff: readonly (readonly XY[])[],
): SvgNode {
  const k = style.symbolScale;
  const size = 13.5 * k;
  const step = 20 * k;
  const pad = 10 * k;
  const width =
    Math.max(...lines.map((line, i) => textWidth(line, size, 'sans', i === 0 ? 700 : 400))) + 2 * pad;
  const height = lines.length * step + pad;
  const [left, top] = labelPlace(at, { width, height }, within, keepOff);
  return group(
    'ink-label',
    element('rect', { x: left, y: top, width, height, rx: 3, fill: style.inks.ink }),
    ...lines.map((line, i) =>
      plainText(line, left + pad, top + pad / 2 + step * (i + 0.72), {
        size,
        weight: i === 0 ? 700 : 400,
        ink: style.inks.sheet,
      }),
    ),
  );
}
