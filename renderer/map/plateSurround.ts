import { element } from '../../shared/plate/element.ts';
import { drawFoot, drawFrame, type FootContent, frameMargin } from '../../shared/plate/frame.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { PlateView } from '../../shared/plate/view.ts';
import type { PlateSize } from './usePlateSize.ts';

const FOOT_PX = 56;

/** Height of the strip below the map that holds title, scale and north, pixels. */
export const footPx = (largeType: boolean): number => Math.round(FOOT_PX * (largeType ? 1.2 : 1));

/** What stands round the map on the screen: the border, the graduated frame and the foot. */
export function drawSurround(
  view: PlateView,
  { width, height }: Pick<PlateSize, 'width' | 'height'>,
  foot: number,
  style: PlateStyle,
  words: FootContent,
): SvgNode {
  const margin = frameMargin(style);
  const box = { x: margin, y: margin, width: width - 2 * margin, height: height - 2 * margin - foot };
  const here = { ...view, box };
  const area = { x: margin, y: height - foot, width: width - 2 * margin, height: foot - 2 };
  return element(
    'svg',
    { width, height, viewBox: `0 0 ${String(width)} ${String(height)}` },
    element('rect', {
      x: 1,
      y: 1,
      width: width - 2,
      height: height - 2,
      fill: 'none',
      stroke: style.inks.ink,
      'stroke-width': 2,
    }),
    drawFrame(here, style, words.units),
    drawFoot(area, here, style, words),
  );
}
