import { element, group } from '../../shared/plate/element.ts';
import { haloText } from '../../shared/plate/labels.ts';
import { closedPath } from '../../shared/plate/pathData.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import { textSize } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { XY } from '../../shared/plate/view.ts';

/** A landmark: triangle with a dot, its name beside it. */
export function landmarkMark([x, y]: XY, name: string, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  const size = textSize(style, 13.5);
  return group(
    'landmark',
    element('path', {
      d: closedPath([
        [
          [x, y - 7.5 * k],
          [x + 7 * k, y + 5 * k],
          [x - 7 * k, y + 5 * k],
        ],
      ]),
      fill: style.inks.sheet,
      stroke: style.inks.ink,
      'stroke-width': 1.6 * k,
      'stroke-linejoin': 'round',
    }),
    element('circle', { cx: x, cy: y + 1 * k, r: 1.6 * k, fill: style.inks.ink }),
    name === '' ? null : haloText(name, x + 10 * k, y + size * 0.36, style, { size, ink: style.inks.ink }),
  );
}
