import type { PlanePoint, PlanePolygon, PlaneRing } from '../geometry/points.ts';
import { contourLabels, lineBoxes, lineLength } from './contourLabels.ts';
import { element, group, round2 } from './element.ts';
import { LastMade } from './lastMade.ts';
import { fairMarks, waterMarks } from './readingMarks.ts';
import { closedPath, openPath, segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { contains, distance, distanceToEdge, walk } from './shape.ts';
import type { Shape } from './shape.ts';
import { shapeIn } from './shapeIn.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView, XY } from './view.ts';
import { boxContains, grown, overlaps, projection, projectionKey } from './view.ts';

/** What the fitted surface says, ready to draw. Everything is clipped to the greens. */
export interface ReliefDrawing {
  readonly greens: readonly PlanePolygon[];
  /** Ground at least this steep as even-odd rings, from 1 % up; each class contains the next. */
  readonly slopeClasses: readonly { readonly fromPct: number; readonly rings: readonly PlaneRing[] }[];
  readonly contours: readonly {
    /** Every second one, with its height in the line. */
    readonly heavy: boolean;
    readonly label: string;
    readonly lines: readonly (readonly PlanePoint[])[];
    /** Heights not yet firm are dashed. */
    readonly unsure: boolean;
  }[];
  readonly arrows: readonly {
    readonly at: PlanePoint;
    readonly downhillBearingDeg: number;
    readonly slopePct: number;
  }[];
  readonly lines: readonly { readonly kind: 'tierEdge' | 'ridge'; readonly points: readonly PlanePoint[] }[];
  /** Lines water runs along, downhill. */
  readonly water?: readonly (readonly PlanePoint[])[];
  /** Places where a hole could fairly be cut. */
  readonly fair?: readonly PlanePoint[];
  /** Which way a tier edge falls at a point: true bearing of steepest descent, or null where nothing is fitted. */
  readonly downhillAt: ((at: PlanePoint) => number) | null;
}

/** Fall below which no arrow is drawn, percent. */
const leastArrowPct = 0.6;

const reliefBefore = new LastMade<ReliefDrawing, SvgNode>();
/** The larger part of it, which keeps clear of nothing. */
const tintsBefore = new LastMade<ReliefDrawing, SvgNode>();
/** What is kept clear further than this from the greens makes no difference to them, drawing units. */
const CLEAR_REACH = 60;

export function drawRelief(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  keepClear: readonly Box[],
): SvgNode {
  const rooms = relief.greens.map((polygon) => grown(shapeIn(view, polygon).box, CLEAR_REACH));
  const near = keepClear.filter((box) => rooms.some((room) => overlaps(room, box)));
  const { x, y, width, height } = view.box;
  const boxes = [{ x, y, width, height }, ...near].flatMap((box) => [box.x, box.y, box.width, box.height]);
  return reliefBefore.get(relief, [projectionKey(view), style, ...boxes], () =>
    reliefNode(view, style, relief, near),
  );
}

function reliefNode(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  keepClear: readonly Box[],
): SvgNode {
  const { toDrawing } = projection(view);
  const greens = relief.greens.map((polygon) => shapeIn(view, polygon));
  const clipId = `${style.idPrefix}-greens`;
  const clipped = { 'clip-path': `url(#${clipId})` };
  const edges = lineBoxes(
    relief.lines.map((line) => line.points.map(toDrawing)),
    5 * style.symbolScale,
  );
  const { labels, busy } = contourLabels(view, style, relief, greens, [...keepClear, ...edges]);
  return group(
    'relief',
    element(
      'clipPath',
      { id: clipId },
      element('path', { d: greens.map((g) => closedPath(g.rings)).join(''), 'clip-rule': 'evenodd' }),
    ),
    tintsBefore.get(relief, [projectionKey(view), style], () =>
      element('g', clipped, ...slopeTints(view, style, relief), ...contourLines(view, style, relief)),
    ),
    ...waterMarks(view, style, relief.water ?? []),
    ...fairMarks(view, style, relief.fair ?? []),
    ...labels,
    ...fallArrows(view, style, relief, greens, [...keepClear, ...busy]),
    ...relief.lines.map((line) => shapeLine(view, style, line, relief.downhillAt)),
    // The tints reach under the edge of the green, so the edge is drawn again over them.
    ...greens.map((green) =>
      element('path', {
        d: closedPath(green.rings),
        fill: 'none',
        stroke: style.inks.ink,
        'stroke-width': 2 * style.symbolScale,
      }),
    ),
  );
}

function slopeTints(view: PlateView, style: PlateStyle, relief: ReliefDrawing): SvgNode[] {
  const { toDrawing } = projection(view);
  return relief.slopeClasses.flatMap(({ fromPct, rings }, i) => {
    const look = style.inks.slopes[Math.min(4, Math.floor(fromPct)) - 1];
    if (look === undefined || rings.length === 0) return [];
    // Each class contains the next: by the even-odd rule the two together fill only what lies between.
    const next = relief.slopeClasses[i + 1]?.rings ?? [];
    const d = closedPath([...rings, ...next].map((ring) => ring.map(toDrawing)));
    return [element('path', { d, fill: look.fill, 'fill-opacity': look.opacity, 'fill-rule': 'evenodd' })];
  });
}

function contourLines(view: PlateView, style: PlateStyle, relief: ReliefDrawing): (SvgNode | null)[] {
  const { toDrawing } = projection(view);
  const k = style.symbolScale;
  return [false, true].flatMap((heavy) =>
    [false, true].map((unsure) => {
      const d = relief.contours
        .filter((contour) => contour.heavy === heavy && contour.unsure === unsure)
        .flatMap((contour) => contour.lines.map((line) => openPath(line.map(toDrawing))))
        .join('');
      const ink = heavy ? style.inks.contourHeavy : style.inks.contour;
      return strokes(
        d,
        ink,
        (heavy ? 1.35 : 0.75) * k,
        unsure ? { 'stroke-dasharray': `${5 * k} ${4 * k}` } : {},
      );
    }),
  );
}

function fallArrows(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  greens: readonly Shape[],
  keepClear: readonly Box[],
): (SvgNode | null)[] {
  const { toDrawing, turned } = projection(view);
  const k = style.symbolScale;
  const shafts: string[] = [];
  const heads: string[] = [];
  const kept: XY[] = [];
  for (const arrow of relief.arrows) {
    if (arrow.slopePct < leastArrowPct) continue;
    const [x, y] = toDrawing(arrow.at);
    if (!boxContains(view.box, [x, y])) continue;
    const angle = (turned(arrow.downhillBearingDeg) * Math.PI) / 180;
    const dx = Math.sin(angle);
    const dy = -Math.cos(angle);
    const length = Math.min(24, 7 + 4.2 * arrow.slopePct) * k;
    const tail: XY = [x - (dx * length) / 2, y - (dy * length) / 2];
    const tip: XY = [x + (dx * length) / 2, y + (dy * length) / 2];
    const clear = (p: XY): boolean =>
      greens.some((green) => contains(green, p[0], p[1]) && distanceToEdge(green, p[0], p[1]) > 5 * k) &&
      !keepClear.some((box) => boxContains(grown(box, 3 * k), p));
    if (!clear(tail) || !clear(tip) || kept.some((p) => distance(p, [x, y]) < 30 * k)) continue;
    kept.push([x, y]);
    shafts.push(segment(tail[0], tail[1], tip[0] - dx * 3 * k, tip[1] - dy * 3 * k));
    heads.push(
      closedPath([
        [
          tip,
          [tip[0] - dx * 5.6 * k - dy * 2.3 * k, tip[1] - dy * 5.6 * k + dx * 2.3 * k],
          [tip[0] - dx * 5.6 * k + dy * 2.3 * k, tip[1] - dy * 5.6 * k - dx * 2.3 * k],
        ],
      ]),
    );
  }
  if (shafts.length === 0) return [];
  return [
    group(
      'fall',
      strokes(shafts.join(''), style.inks.fall, 1.15 * k),
      element('path', { d: heads.join(''), fill: style.inks.fall }),
    ),
  ];
}

/** Tier edge: a line with wedge ticks downhill. Ridge: ticks both sides. */
function shapeLine(
  view: PlateView,
  style: PlateStyle,
  line: ReliefDrawing['lines'][number],
  downhillAt: ReliefDrawing['downhillAt'],
): SvgNode {
  const { toDrawing, toPlane, turned } = projection(view);
  const k = style.symbolScale;
  const drawn = line.points.map(toDrawing);
  // `walk` closes rings, so an open line is walked there and back and only the way there is kept.
  const there = walk([...drawn, ...[...drawn].reverse()], 7.5 * k).slice(
    0,
    Math.round(lineLength(drawn) / (7.5 * k)),
  );
  const ticks = there.map(({ at, tangent }) => {
    const left: XY = [tangent[1], -tangent[0]];
    if (line.kind === 'ridge')
      return segment(
        at[0] + left[0] * 4 * k,
        at[1] + left[1] * 4 * k,
        at[0] - left[0] * 4 * k,
        at[1] - left[1] * 4 * k,
      );
    const fall = downhillAt === null ? 0 : (turned(downhillAt(toPlane(at))) * Math.PI) / 180;
    const side = downhillAt !== null && left[0] * Math.sin(fall) - left[1] * Math.cos(fall) < 0 ? -1 : 1;
    const tip: XY = [at[0] + left[0] * side * 6.5 * k, at[1] + left[1] * side * 6.5 * k];
    return `${segment(at[0] - tangent[0] * 1.3 * k, at[1] - tangent[1] * 1.3 * k, tip[0], tip[1])}L${round2(at[0] + tangent[0] * 1.3 * k)} ${round2(at[1] + tangent[1] * 1.3 * k)}Z`;
  });
  return group(
    line.kind,
    strokes(openPath(drawn), style.inks.ink, 1.3 * k),
    line.kind === 'ridge'
      ? strokes(ticks.join(''), style.inks.ink, 1.1 * k)
      : element('path', { d: ticks.join(''), fill: style.inks.ink }),
  );
}
