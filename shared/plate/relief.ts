import type { PlanePoint, PlanePolygon, PlaneRing } from '../geometry/points.ts';
import { element, group, round2 } from './element.ts';
import { haloText, textWidth } from './labels.ts';
import { closedPath, openPath, segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { contains, distance, distanceToEdge, shapeOf, walk } from './shape.ts';
import type { Shape } from './shape.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView, XY } from './view.ts';
import { boxContains, grown, projection } from './view.ts';

/** What the fitted surface says, ready to draw. Everything is clipped to the greens. */
export interface ReliefDrawing {
  readonly greens: readonly PlanePolygon[];
  /** Ground at least this steep as even-odd rings, from 1 % up; each class contains the next. */
  readonly slopeClasses: readonly { readonly fromPct: number; readonly rings: readonly PlaneRing[] }[];
  readonly contours: readonly {
    /** Every second one: 10 cm apart, with its height in the line. */
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
  /** Which way a tier edge falls at a point: true bearing of steepest descent, or null where nothing is fitted. */
  readonly downhillAt: ((at: PlanePoint) => number) | null;
}

/** Fall below which no arrow is drawn, percent. */
const leastArrowPct = 0.6;

export function drawRelief(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  keepClear: readonly Box[],
): SvgNode {
  const { toDrawing } = projection(view);
  const greens = relief.greens.map((polygon) => shapeOf(polygon, toDrawing));
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
    element('g', clipped, ...slopeTints(view, style, relief), ...contourLines(view, style, relief)),
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

/** Small boxes along lines, for texts to keep clear of. */
function lineBoxes(lines: readonly (readonly XY[])[], half: number): Box[] {
  return lines.flatMap((line) => {
    const count = Math.ceil(lineLength(line) / (2 * half));
    return Array.from({ length: count + 1 }, (_, i) => {
      const [x, y] = pointAlong(line, i * 2 * half);
      return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
    });
  });
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

function contourLabels(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  greens: readonly Shape[],
  keepClear: readonly Box[],
): { labels: SvgNode[]; busy: Box[] } {
  const { toDrawing } = projection(view);
  const size = textSize(style, 13);
  const labels: SvgNode[] = [];
  const busy: Box[] = [];
  for (const contour of relief.contours) {
    if (!contour.heavy || contour.label === '') continue;
    const width = textWidth(contour.label, size, 'serifItalic');
    const drawn = contour.lines
      .map((line) => line.map(toDrawing))
      .map((line) => ({ line, length: lineLength(line) }))
      .filter(({ length }) => length > width * 2.4)
      .sort((a, b) => b.length - a.length)[0];
    if (drawn === undefined) continue;
    const spot = labelSpot(drawn.line, width, (box) => {
      const inGreen = greens.some(
        (green) =>
          contains(green, box.x + box.width / 2 - width / 2, box.y + box.height / 2) &&
          contains(green, box.x + box.width / 2 + width / 2, box.y + box.height / 2),
      );
      return (
        inGreen &&
        boxContains(view.box, [box.x, box.y]) &&
        boxContains(view.box, [box.x + box.width, box.y + box.height]) &&
        ![...keepClear, ...busy].some((other) => meets(box, other))
      );
    });
    if (spot === null) continue;
    busy.push(spot.box);
    labels.push(
      haloText(contour.label, spot.at[0], spot.at[1] + size * 0.33, style, {
        size,
        face: 'serifItalic',
        ink: style.inks.contourHeavy,
        anchor: 'middle',
        turnDeg: spot.turnDeg,
        haloWidth: size * 0.42,
      }),
    );
  }
  return { labels, busy };
}

const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const lineLength = (line: readonly XY[]): number =>
  line.reduce((sum, point, i) => sum + (i === 0 ? 0 : distance(line[i - 1] ?? point, point)), 0);

/** The straightest allowed stretch of a line about as long as its label. */
function labelSpot(
  line: readonly XY[],
  width: number,
  allowed: (box: Box) => boolean,
): { at: XY; turnDeg: number; box: Box } | null {
  let best: { at: XY; turnDeg: number; box: Box; bend: number } | null = null;
  const stations = 24;
  const total = lineLength(line);
  for (let i = 2; i < stations - 1; i += 1) {
    const middle = (total * i) / stations;
    const a = pointAlong(line, middle - width / 2);
    const m = pointAlong(line, middle);
    const b = pointAlong(line, middle + width / 2);
    const chord = Math.max(distance(a, b), 0.01);
    const bend = Math.abs((b[0] - a[0]) * (m[1] - a[1]) - (b[1] - a[1]) * (m[0] - a[0])) / chord;
    let turnDeg = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    if (turnDeg > 90) turnDeg -= 180;
    if (turnDeg < -90) turnDeg += 180;
    const half = Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]), 12) / 2;
    const box = grown({ x: m[0], y: m[1], width: 0, height: 0 }, half);
    // Text close to upright reads poorly; prefer level stretches.
    const cost = bend + Math.abs(turnDeg) / 30;
    if ((best === null || cost < best.bend) && allowed(box)) best = { at: m, turnDeg, box, bend: cost };
  }
  return best;
}

function pointAlong(line: readonly XY[], along: number): XY {
  let left = along;
  for (let i = 1; i < line.length; i += 1) {
    const a = line[i - 1] as XY;
    const b = line[i] as XY;
    const length = distance(a, b);
    if (left <= length && length > 0) {
      const t = Math.max(0, left / length);
      return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    }
    left -= length;
  }
  return line[line.length - 1] ?? [0, 0];
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
