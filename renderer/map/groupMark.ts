import type { PlanePoint, PlanePolygon } from '../../shared/geometry/points.ts';
import { element, group } from '../../shared/plate/element.ts';
import { closedPath, openPath } from '../../shared/plate/pathData.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { XY } from '../../shared/plate/view.ts';

/** Several things held together, or a frame being pulled round some. */
export interface GroupDrawing {
  readonly areas: readonly PlanePolygon[];
  readonly lines: readonly (readonly PlanePoint[])[];
  readonly points: readonly PlanePoint[];
  /** Opposite corners of the frame in hand. */
  readonly frame: readonly [PlanePoint, PlanePoint] | null;
  /** The top of all of them, over which the turning handle stands. */
  readonly turner: PlanePoint | null;
}

/** How far over a held thing its turning handle stands, pixels. */
export const TURNER_PX = 26;

export function groupMark(
  toDrawing: (point: PlanePoint) => XY,
  style: PlateStyle,
  held: GroupDrawing,
): SvgNode {
  const { inks, symbolScale: k } = style;
  const areas = held.areas.map((rings) => closedPath(rings.map((ring) => ring.map(toDrawing)))).join('');
  const lines = held.lines.map((points) => openPath(points.map(toDrawing))).join('');
  const line = { fill: 'none', stroke: inks.select, 'stroke-width': 2 * k, 'stroke-linejoin': 'round' };
  return group(
    'held-group',
    element('path', { d: areas, fill: inks.select, 'fill-opacity': 0.1, 'fill-rule': 'evenodd' }),
    element('path', {
      ...line,
      d: areas + lines,
      stroke: inks.halo,
      'stroke-width': 5 * k,
      'stroke-opacity': 0.7,
    }),
    element('path', { ...line, d: areas + lines }),
    ...held.points.map((at) => {
      const [cx, cy] = toDrawing(at);
      return element('circle', { ...line, cx, cy, r: 11 * k });
    }),
    held.turner === null ? null : turnerMark(toDrawing(held.turner), style),
    held.frame === null ? null : frameMark(toDrawing(held.frame[0]), toDrawing(held.frame[1]), style),
  );
}

/** The turning handle on its stalk over the top of what is held. */
export function turnerMark([x, top]: XY, style: PlateStyle): SvgNode {
  const { inks, symbolScale: k } = style;
  return group(
    'turner',
    element('path', {
      d: openPath([
        [x, top],
        [x, top - TURNER_PX + 5],
      ]),
      stroke: inks.select,
      'stroke-width': 1.4 * k,
    }),
    element('circle', {
      cx: x,
      cy: top - TURNER_PX,
      r: 5.5 * k,
      fill: inks.sheet,
      stroke: inks.select,
      'stroke-width': 2 * k,
    }),
  );
}

function frameMark([ax, ay]: XY, [bx, by]: XY, style: PlateStyle): SvgNode {
  const k = style.symbolScale;
  return element('rect', {
    'data-part': 'frame',
    x: Math.min(ax, bx),
    y: Math.min(ay, by),
    width: Math.abs(ax - bx),
    height: Math.abs(ay - by),
    fill: style.inks.select,
    'fill-opacity': 0.08,
    stroke: style.inks.select,
    'stroke-width': 1.6 * k,
    'stroke-dasharray': `${String(6 * k)} ${String(4 * k)}`,
  });
}
