import type { PlanePoint } from '../geometry/points.ts';
import { element, group } from './element.ts';
import { haloText, textWidth } from './labels.ts';
import { LastMade } from './lastMade.ts';
import { segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import { type PlateView, projection, projectionKey, type XY } from './view.ts';

export interface Measurements {
  readonly heights: readonly {
    readonly id: string;
    readonly at: PlanePoint;
    readonly text: string;
    readonly doubtful: boolean;
  }[];
  readonly slopes: readonly {
    readonly id: string;
    readonly at: PlanePoint;
    readonly downhillBearingDeg: number;
    readonly text: string;
  }[];
  /** Where a new measurement would help most. */
  readonly measureHere: readonly PlanePoint[];
}

/** Spot heights (small cross), slope readings (ring and arrow), evidence in doubt, and where to measure next. */
export function drawMeasurements(view: PlateView, style: PlateStyle, measurements: Measurements): SvgNode {
  const { toDrawing } = projection(view);
  const { inks } = style;
  const k = style.symbolScale;
  const place = projectionKey(view);
  const heights = measurements.heights.map((one) =>
    heightsBefore.get(one.at, [place, style, one.id, one.text, one.doubtful], () =>
      drawHeight(view, style, one),
    ),
  );
  const slopes = measurements.slopes.map((one) =>
    slopesBefore.get(one.at, [place, style, one.id, one.text, one.downhillBearingDeg], () =>
      drawSlope(view, style, one),
    ),
  );
  const doubts = measurements.measureHere.map((at) => {
    const [x, y] = toDrawing(at);
    const r = 9 * k;
    return group(
      'measure-here',
      element('path', {
        d: `${segment(x, y - r, x + r, y)}L${x.toFixed(2)} ${(y + r).toFixed(2)}L${(x - r).toFixed(2)} ${y.toFixed(2)}Z`,
        fill: inks.sheet,
        stroke: inks.doubt,
        'stroke-width': 1.8 * k,
      }),
      strokes(
        segment(x - 3.6 * k, y, x + 3.6 * k, y) + segment(x, y - 3.6 * k, x, y + 3.6 * k),
        inks.doubt,
        1.8 * k,
      ),
    );
  });
  return group('measurements', ...heights, ...slopes, ...doubts);
}

const heightsBefore = new LastMade<PlanePoint, SvgNode>();
const slopesBefore = new LastMade<PlanePoint, SvgNode>();

function drawHeight(
  view: PlateView,
  style: PlateStyle,
  { id, at, text, doubtful }: Measurements['heights'][number],
): SvgNode {
  const { inks, symbolScale: k } = style;
  const size = textSize(style, 13.5);
  const [x, y] = projection(view).toDrawing(at);
  return element(
    'g',
    { 'data-part': 'spot-height', 'data-id': id },
    strokes(segment(x - 4 * k, y, x + 4 * k, y) + segment(x, y - 4 * k, x, y + 4 * k), inks.ink, 1.5 * k),
    doubtful
      ? element('circle', {
          cx: x,
          cy: y,
          r: 10 * k,
          fill: 'none',
          stroke: inks.alert,
          'stroke-width': 2 * k,
          'stroke-dasharray': `${3.4 * k} ${2.6 * k}`,
        })
      : null,
    haloText(text, x + 6 * k, y + size * 0.36, style, { size, ink: inks.ink }),
  );
}

function drawSlope(
  view: PlateView,
  style: PlateStyle,
  { id, at, downhillBearingDeg, text }: Measurements['slopes'][number],
): SvgNode {
  const { toDrawing, turned } = projection(view);
  const { inks, symbolScale: k } = style;
  const size = textSize(style, 13.5);
  const [x, y] = toDrawing(at);
  const angle = (turned(downhillBearingDeg) * Math.PI) / 180;
  const [dx, dy] = [Math.sin(angle), -Math.cos(angle)];
  const tip: XY = [x + dx * 20 * k, y + dy * 20 * k];
  const wing = (side: number): XY => [
    tip[0] - dx * 6.5 * k + dy * 3 * k * side,
    tip[1] - dy * 6.5 * k - dx * 3 * k * side,
  ];
  const width = textWidth(text, size, 'sans', 600);
  return element(
    'g',
    { 'data-part': 'slope-reading', 'data-id': id },
    strokes(
      segment(x + dx * 3.4 * k, y + dy * 3.4 * k, tip[0] - dx * 4 * k, tip[1] - dy * 4 * k),
      inks.ink,
      1.8 * k,
    ),
    element('path', {
      d: `${segment(tip[0], tip[1], wing(1)[0], wing(1)[1])}L${wing(-1)[0].toFixed(2)} ${wing(-1)[1].toFixed(2)}Z`,
      fill: inks.ink,
    }),
    element('circle', {
      cx: x,
      cy: y,
      r: 3.2 * k,
      fill: inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1.7 * k,
    }),
    haloText(text, dx > 0.5 ? x - width - 7 * k : x + 8 * k, y - 5 * k, style, {
      size,
      weight: 600,
      ink: inks.ink,
    }),
  );
}
