import type { PlanePoint } from '../geometry/points.ts';
import { element } from './element.ts';
import { openPath, segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import { type PlateView, projection, type XY } from './view.ts';

/** Room between the small squares of fair ground below which every second one is left out. */
const LEAST_APART = 9;

/** Lines water runs along: thin and dashed in the ink of water, each with an arrowhead where it ends. */
export function waterMarks(
  view: PlateView,
  { inks, symbolScale: k }: PlateStyle,
  lines: readonly (readonly PlanePoint[])[],
): (SvgNode | null)[] {
  const { toDrawing } = projection(view);
  const drawn = lines.map((line) => line.map(toDrawing)).filter((line) => line.length > 1);
  const heads = drawn.map((line) => {
    const tip = line[line.length - 1] as XY;
    const from = line[Math.max(0, line.length - 4)] as XY;
    const length = Math.max(1e-6, Math.hypot(tip[0] - from[0], tip[1] - from[1]));
    const [ux, uy] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
    const wing = (side: number): string =>
      segment(tip[0], tip[1], tip[0] - (6 * ux + 3 * side * uy) * k, tip[1] - (6 * uy - 3 * side * ux) * k);
    return wing(1) + wing(-1);
  });
  return [
    strokes(drawn.map(openPath).join(''), inks.water, 1.5 * k, { dash: `${String(7 * k)} ${String(3 * k)}` }),
    strokes(heads.join(''), inks.water, 1.5 * k),
  ];
}

/** Ground a flag can fairly stand on: small open squares, as squares are flags. */
export function fairMarks(
  view: PlateView,
  { inks, symbolScale: k }: PlateStyle,
  places: readonly PlanePoint[],
): (SvgNode | null)[] {
  const { toDrawing } = projection(view);
  const taken = new Set<string>();
  const side = 4.4 * k;
  const apart = LEAST_APART * k;
  return places.flatMap((at) => {
    const [x, y] = toDrawing(at);
    const cell = `${String(Math.floor(x / apart))} ${String(Math.floor(y / apart))}`;
    if (taken.has(cell)) return [];
    taken.add(cell);
    return [
      element('rect', {
        x: x - side / 2,
        y: y - side / 2,
        width: side,
        height: side,
        fill: 'none',
        stroke: inks.ink2,
        'stroke-width': 1.1 * k,
      }),
    ];
  });
}
