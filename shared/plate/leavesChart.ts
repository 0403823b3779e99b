import { chance, withUnit } from '../units/format.ts';
import { element, group } from './element.ts';
import { plainText, textWidth } from './labels.ts';
import type { LeaveShare, LeaveShares } from './leaveShares.ts';
import { segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';

/** Least width of the drawing: words, some bar, and the figure. */
const LEAST_WIDTH = 200;

/** Bars of where balls stop: by distance to the hole, and under a rule where those off the green lie; trouble has crosses. */
export function drawLeaves(
  width: number,
  style: PlateStyle,
  { distances, offGreen }: LeaveShares,
  description: string,
): SvgNode {
  const k = style.symbolScale;
  const size = textSize(style, 14);
  const row = size * 1.5;
  const wide = Math.max(width, LEAST_WIDTH * k);
  // A cross stands between the words and the bar.
  const widest = Math.max(...[...distances, ...offGreen].map(({ words }) => textWidth(words, size)));
  const wordsWidth = Math.max(size * 7.6, Math.min(widest, wide / 2)) + 12 * k;
  const figureWidth = size * 3.2;
  const room = wide - wordsWidth - figureWidth;
  const most = Math.max(...distances.map(({ share }) => share), ...offGreen.map(({ share }) => share), 0.01);
  const gap = offGreen.length === 0 ? 0 : row * 1.3;
  const bar = ({ words, share, trouble }: LeaveShare, top: number): SvgNode => {
    const middle = top + row / 2;
    const long = (room * share) / most;
    const r = 3 * k;
    const x = wordsWidth - 9 * k;
    return group(
      'leave',
      plainText(words, 0, middle + size * 0.34, { size, ink: style.inks.ink2 }),
      trouble
        ? strokes(
            segment(x - r, middle - r, x + r, middle + r) + segment(x - r, middle + r, x + r, middle - r),
            style.inks.propose,
            1.6 * k,
          )
        : null,
      element('rect', {
        x: wordsWidth,
        y: middle - row * 0.24,
        width: Math.max(long, 0),
        height: row * 0.48,
        fill: style.inks.proposeWash,
        stroke: style.inks.propose,
        'stroke-width': k,
      }),
      plainText(withUnit(chance(share)), wordsWidth + long + 6 * k, middle + size * 0.34, {
        size,
        ink: style.inks.ink,
      }),
    );
  };
  const below = distances.length * row + gap;
  const height = Math.ceil(below + offGreen.length * row + 2);
  return element(
    'svg',
    { width: wide, height, viewBox: `0 0 ${wide} ${height}`, role: 'img', 'aria-label': description },
    element('title', {}, description),
    ...distances.map((one, i) => bar(one, i * row)),
    offGreen.length === 0
      ? null
      : group(
          'off-green',
          strokes(
            segment(0, below - gap + row * 0.25, wide, below - gap + row * 0.25),
            style.inks.edge,
            0.8 * k,
          ),
          plainText('Of all shots, off the green', 0, below - row * 0.3, {
            size,
            weight: 600,
            ink: style.inks.ink,
          }),
        ),
    ...offGreen.map((one, i) => bar(one, below + i * row)),
  );
}

/** The same in words, for those who cannot see it. */
export const leavesText = ({ distances, offGreen }: LeaveShares): string =>
  [...distances, ...offGreen]
    .filter(({ share }) => share > 0)
    .map(({ words, share }) => `${words} ${withUnit(chance(share))}`)
    .join(', ');
