import { METRES_PER_YARD } from '../units/conversions.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { element, group } from './element.ts';
import { northArrow, playArrow } from './footArrows.ts';
import { plainText, textWidth } from './labels.ts';
import { openPath } from './pathData.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView, XY } from './view.ts';

/** Length of one graduation of the frame: 5 yd, or 5 m for those who read metres. */
export const barLengthM = (units: UnitsPreference): number =>
  units.system === 'yards' ? 5 * METRES_PER_YARD : 5;

/** How far the double frame stands out round the map, drawing units. */
export const frameMargin = (style: PlateStyle): number => Math.round(14 * style.symbolScale * 10) / 10;

/** Room the foot needs below the map, drawing units. */
export const footHeight = (style: PlateStyle): number => Math.round(54 * style.symbolScale);

export interface FootContent {
  readonly title: string;
  readonly subtitle: string;
  readonly units: UnitsPreference;
  readonly placed: boolean;
  /** The way the hole is played, where it is known; left out on sheets whose up it is. */
  readonly playBearingDeg?: number;
  /** Show the legend of slope classes; never in black-only print, which has no tints. */
  readonly slopeLegend: boolean;
}

/** Double frame round the map box, graduated in bars from the middle outward. */
export function drawFrame(view: PlateView, style: PlateStyle, units: UnitsPreference): SvgNode {
  const { box } = view;
  const { inks } = style;
  const m = frameMargin(style);
  const k = style.symbolScale;
  const bar = barLengthM(units) * view.unitsPerM;
  const thick = m * 0.42;
  const off = m * 0.62;
  const d: string[] = [];
  const bars = (from: number, length: number, put: (start: number, end: number) => void): void => {
    const middle = from + length / 2;
    const first = -Math.ceil(length / 2 / bar);
    for (let i = first; i * bar < length / 2; i += 1) {
      if ((i & 1) !== 0) continue;
      const start = Math.max(from, middle + i * bar);
      const end = Math.min(from + length, middle + (i + 1) * bar);
      if (end - start > 0.5) put(start, end);
    }
  };
  const rect = (x: number, y: number, w: number, h: number): string =>
    `${openPath([
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ])}Z`;
  bars(box.x, box.width, (a, b) => {
    d.push(rect(a, box.y - off, b - a, thick), rect(a, box.y + box.height + off - thick, b - a, thick));
  });
  bars(box.y, box.height, (a, b) => {
    d.push(rect(box.x - off, a, thick, b - a), rect(box.x + box.width + off - thick, a, thick, b - a));
  });
  const outline = (by: number, width: number): SvgNode =>
    element('rect', {
      x: box.x - by,
      y: box.y - by,
      width: box.width + 2 * by,
      height: box.height + 2 * by,
      fill: 'none',
      stroke: inks.ink,
      'stroke-width': width,
    });
  return group(
    'frame',
    element('path', { 'data-part': 'bars', d: d.join(''), fill: inks.ink }),
    outline(0.5 * k, 1 * k),
    outline(off, 0.9 * k),
    outline(m - 1 * k, 2 * k),
  );
}

/** Scale bar: two bars of 5, three figures, drawn to the map's own scale. */
export function scaleBar(
  [x, y]: XY,
  view: PlateView,
  style: PlateStyle,
  units: UnitsPreference,
  count = 2,
): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const bar = barLengthM(units) * view.unitsPerM;
  const h = 5 * k;
  const size = textSize(style, 13.5);
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const bars = Array.from({ length: count }, (_, i) =>
    element('rect', {
      x: x + i * bar,
      y: y - h / 2,
      width: bar,
      height: h,
      fill: i % 2 === 0 ? inks.ink : inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1 * k,
    }),
  );
  const figures = Array.from({ length: count + 1 }, (_, i) => {
    const text = String(5 * i);
    return i < count
      ? plainText(text, x + i * bar, y - h - 1 * k, { size, ink: inks.ink, anchor: 'middle' })
      : plainText(`${text} ${unit}`, x + i * bar - textWidth(text, size) / 2, y - h - 1 * k, {
          size,
          ink: inks.ink,
        });
  });
  return group('scale', ...bars, ...figures);
}

function slopeLegend([x, y]: XY, width: number, style: PlateStyle): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const size = textSize(style, 13.5);
  const cell = width / 5;
  const h = 11 * k;
  const cells = Array.from({ length: 5 }, (_, i) => {
    const look = inks.slopes[i - 1];
    return element(
      'g',
      {},
      element('rect', { x: x + i * cell, y: y - h, width: cell, height: h, fill: inks.fills.green }),
      element('rect', {
        x: x + i * cell,
        y: y - h,
        width: cell,
        height: h,
        fill: look?.fill ?? 'none',
        'fill-opacity': look?.opacity,
        stroke: inks.edge,
        'stroke-width': 1 * k,
      }),
    );
  });
  const figures = ['0', '1', '2', '3', '4', 'over'].map((text, i) =>
    plainText(text, i === 5 ? x + width : x + i * cell, y + size * 0.95, {
      size,
      ink: inks.ink,
      anchor: i === 5 ? 'end' : 'middle',
    }),
  );
  return group(
    'slope-legend',
    plainText('Slope, %', x - 10 * k, y - 1 * k, { size, ink: inks.ink, anchor: 'end' }),
    ...cells,
    ...figures,
  );
}

/** Title, north, scale and legend below the map, as many as the width holds; never over the ground. */
export function drawFoot(area: Box, view: PlateView, style: PlateStyle, foot: FootContent): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const titleSize = textSize(style, 19);
  const small = textSize(style, 13.5);
  const legend = foot.slopeLegend && inks.slopes.length > 0;
  const barRoom = barLengthM(foot.units) * view.unitsPerM;
  const besideLegend = textWidth('Slope, %', small) + 26 * k;
  // On a small plate with large type the classes draw together rather than vanish.
  const roomy = 250 * k + besideLegend + barRoom + 60 * k <= area.width;
  const legendWidth = legend ? (roomy ? 250 : 160) * k : 0;
  const legendRoom = legend ? legendWidth + besideLegend : 0;
  const titleRoom =
    Math.max(textWidth(foot.title, titleSize, 'serifItalic', 600) * 1.1, textWidth(foot.subtitle, small)) +
    20 * k;
  const base = area.y + area.height / 2;
  const parts: SvgNode[] = [];
  let x = area.x;
  const northHalf = foot.placed ? 18 * k : textWidth('sheet up', textSize(style, 12)) / 2 + 8 * k;
  const northRoom = 2 * northHalf + 10 * k;
  const play = foot.playBearingDeg;
  const playHalf = textWidth('play', textSize(style, 12)) / 2 + 4 * k;
  const playRoom = play === undefined ? 0 : 2 * playHalf + 10 * k;
  // The room of the scale ends in a gap that may be narrower.
  const fits = (room: number, count: number): boolean =>
    room + count * barRoom + 30 * k + legendRoom <= area.width;
  // Seen from close, one bar tells the scale as well as two, and leaves room for the name.
  const bars = fits(titleRoom + northRoom, 2) ? 2 : 1;
  const withTitle = fits(titleRoom + northRoom, bars);
  if (withTitle) {
    parts.push(
      plainText(foot.title, x, base - 2 * k, { size: titleSize, weight: 600, face: 'serif', ink: inks.ink }),
      plainText(foot.subtitle, x, base + 15 * k, { size: small, ink: inks.ink2 }),
    );
    x += titleRoom;
  }
  const taken = x - area.x;
  const both = fits(taken + northRoom + playRoom, bars);
  // Where one of the two has room, "sheet up" says less than the way of play, and north more.
  const withPlay = play !== undefined && (both || (!foot.placed && fits(taken + playRoom, bars)));
  const withNorth = both || (!withPlay && (withTitle || fits(northRoom, bars)));
  if (withNorth) {
    parts.push(northArrow([x + northHalf, base + 6 * k], style, view.upBearingDeg, foot.placed));
    x += northRoom;
  }
  if (withPlay) {
    parts.push(playArrow([x + playHalf, base + 6 * k], style, play - view.upBearingDeg));
    x += playRoom;
  }
  if (!withNorth && !withPlay) x += 8 * k;
  parts.push(scaleBar([x, base + 9 * k], view, style, foot.units, bars));
  if (legend && fits(x - area.x, bars))
    parts.push(slopeLegend([area.x + area.width - legendWidth - 4 * k, base + 3 * k], legendWidth, style));
  return group('foot', ...parts);
}
