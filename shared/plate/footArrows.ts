import { element, group } from './element.ts';
import { plainText } from './labels.ts';
import { openPath } from './pathData.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** A half-filled needle pointing north on the drawing; "sheet up" when the ground is not placed on the earth. */
export function northArrow([x, y]: XY, style: PlateStyle, upBearingDeg: number, placed: boolean): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const half = (side: number, fill: string): SvgNode =>
    element('path', {
      d: `${openPath([
        [x, y - 12 * k],
        [x + 5.5 * k * side, y + 11 * k],
        [x, y + 6 * k],
      ])}Z`,
      fill,
      stroke: inks.ink,
      'stroke-width': 0.9 * k,
      'stroke-linejoin': 'round',
    });
  const needle = element(
    'g',
    placed && upBearingDeg !== 0
      ? { transform: `rotate(${(-upBearingDeg).toFixed(1)} ${x.toFixed(2)} ${y.toFixed(2)})` }
      : {},
    half(-1, inks.sheet),
    half(1, inks.ink),
  );
  const size = textSize(style, 12);
  return group(
    'north',
    needle,
    plainText(placed ? 'N' : 'sheet up', x, y - 14 * k, {
      size,
      weight: 600,
      face: 'serif',
      ink: inks.ink,
      anchor: 'middle',
    }),
  );
}

/** An open arrow the way the hole is played, by which paces on and from a side are counted. */
export function playArrow([x, y]: XY, style: PlateStyle, turnedDeg: number): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const reach = 10 * k;
  return group(
    'play',
    element('path', {
      d:
        openPath([
          [x, y + reach],
          [x, y - reach],
        ]) +
        openPath([
          [x - 5 * k, y - reach + 6 * k],
          [x, y - reach],
          [x + 5 * k, y - reach + 6 * k],
        ]),
      transform: `rotate(${turnedDeg.toFixed(1)} ${x.toFixed(2)} ${y.toFixed(2)})`,
      fill: 'none',
      stroke: inks.ink,
      'stroke-width': 1.6 * k,
      'stroke-linejoin': 'round',
    }),
    plainText('play', x, y - 14 * k, {
      size: textSize(style, 12),
      weight: 600,
      face: 'serif',
      ink: inks.ink,
      anchor: 'middle',
    }),
  );
}
