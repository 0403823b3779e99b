import { element, group } from './element.ts';
import { haloText, type PlacedLabel } from './labels.ts';
import { flagTag } from './marks.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** Where the ball touches down again. */
export function bead(at: XY | undefined, ink: string, k: number): SvgNode | null {
  return at === undefined ? null : element('circle', { cx: at[0], cy: at[1], r: 2.4 * k, fill: ink });
}

/** The hole, cut into the ground line. */
export function cup([x, y]: XY, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  return element('rect', {
    x: x - 2.6 * k,
    y,
    width: 5.2 * k,
    height: 7 * k,
    fill: style.inks.sheet,
    stroke: style.inks.ink,
    'stroke-width': 1.3 * k,
  });
}

/** A flag on a staff long enough to stand out of the flights. */
export function longFlag([x, y]: XY, label: string, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  // A flag near the top of a low drawing has a shorter staff.
  const top = Math.max(2 * k, y - 52 * k);
  return group(
    'long-flag',
    element('line', {
      x1: x,
      y1: y + 6 * k,
      x2: x,
      y2: top,
      stroke: style.inks.ink,
      'stroke-width': 1.9 * k,
    }),
    flagTag([x - 0.9 * k, top], label, true, style),
  );
}

/** A placed text, with a fine line to what it tells of. */
export function sectionLabel(label: PlacedLabel, style: PlateStyle): SvgNode {
  const { request, box } = label;
  const k = style.symbolScale;
  const foot = box.y + box.height;
  return group(
    'label',
    request.leader
      ? element('line', {
          x1: Math.min(Math.max(request.at[0] + 3 * k, box.x + 6 * k), box.x + box.width - 6 * k),
          y1: foot + 1 * k,
          x2: request.at[0],
          y2: request.at[1] - 5 * k,
          stroke: request.ink,
          'stroke-width': 1.1 * k,
        })
      : null,
    haloText(request.text, box.x + box.width / 2, box.y + box.height * 0.78, style, {
      size: request.size,
      weight: request.weight,
      ink: request.ink,
      anchor: 'middle',
    }),
  );
}
