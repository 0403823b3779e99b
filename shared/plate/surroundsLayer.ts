import { planePoint } from '../geometry/points.ts';
import { NOTHING_PLAIN } from '../planner/surroundsMap.ts';
import { element, group, round2 } from './element.ts';
import { strokes } from './pattern.ts';
import type { PlateStyle } from './style.ts';
import {
  type HatchLines,
  surroundsCells,
  surroundsClasses,
  type SurroundsLayer,
} from './surroundsClasses.ts';
import { regionNames } from './surroundsNames.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView } from './view.ts';
import { projection } from './view.ts';

/**
 * The layer over the ground: every class in its own hatching, edges between classes, and what each region is, told inside
 * the part of the drawing that is seen.
 */
export function drawSurrounds(
  view: PlateView,
  style: PlateStyle,
  layer: SurroundsLayer,
  keepClear: readonly Box[],
  namesIn: Box = view.box,
): SvgNode {
  const { map } = layer;
  const { columns, rows, westM, southM, cellM } = map;
  const kinds = surroundsClasses(layer);
  const classes = surroundsCells(layer);
  const { toDrawing } = projection(view);
  const corner = (column: number, row: number): readonly [number, number] =>
    toDrawing(planePoint(westM + column * cellM, southM + row * cellM));
  const at = (column: number, row: number): number =>
    column < 0 || row < 0 || column >= columns || row >= rows
      ? NOTHING_PLAIN
      : (classes[row * columns + column] ?? NOTHING_PLAIN);

  const cells = new Map<number, string[]>();
  const edges: string[] = [];
  const edge = (c1: number, r1: number, c2: number, r2: number): void => {
    const [a, b] = [corner(c1, r1), corner(c2, r2)];
    edges.push(`M${round2(a[0])} ${round2(a[1])}L${round2(b[0])} ${round2(b[1])}`);
  };
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const here = at(column, row);
      if (here !== at(column - 1, row) && column > 0) edge(column, row, column, row + 1);
      if (here !== at(column, row - 1) && row > 0) edge(column, row, column + 1, row);
      if (here === NOTHING_PLAIN) continue;
      const points = [
        corner(column, row),
        corner(column + 1, row),
        corner(column + 1, row + 1),
        corner(column, row + 1),
      ];
      const d = `M${points.map(([x, y]) => `${round2(x)} ${round2(y)}`).join('L')}Z`;
      const list = cells.get(here);
      if (list === undefined) cells.set(here, [d]);
      else list.push(d);
    }
  }
  const k = style.symbolScale;
  const hatched = kinds.flatMap(({ index, hatch, tint }) => {
    const area = (cells.get(index) ?? []).join('');
    if (area === '') return [];
    const id = `${style.idPrefix}-surrounds-${index}`;
    const ink = style.inks.slopes[tint - 1];
    return [
      element('clipPath', { id }, element('path', { d: area })),
      ink === undefined ? null : element('path', { d: area, fill: ink.fill, 'fill-opacity': ink.opacity }),
      element(
        'g',
        { 'clip-path': `url(#${id})` },
        ...hatch.map((lines) => drawHatch(lines, view.box, lines.spacing * k, style.inks.ink2, 0.8 * k)),
      ),
    ];
  });
  return group(
    'surrounds',
    ...hatched,
    strokes(edges.join(''), style.inks.ink2, 1.1 * k, {}),
    ...regionNames(layer, kinds, classes, corner, style, keepClear, namesIn),
  );
}

/** One hatching over a box, at a spacing in drawing units. */
export function drawHatch(
  { angleDeg, dotted }: HatchLines,
  box: Box,
  spacing: number,
  ink: string,
  width: number,
): SvgNode | null {
  return strokes(hatchLines(box, angleDeg, spacing), ink, dotted === true ? 2.8 * width : width, {
    'stroke-opacity': dotted === true ? 0.8 : 0.55,
    ...(dotted === true && { 'stroke-linecap': 'round', 'stroke-dasharray': `0 ${round2(spacing)}` }),
  });
}

/** Parallel lines over a box; 0 is upright, 90 level. */
function hatchLines(box: Box, angleDeg: number, spacing: number): string {
  const a = (angleDeg * Math.PI) / 180;
  const [dx, dy] = [Math.sin(a), -Math.cos(a)];
  const [nx, ny] = [-dy, dx];
  const [mx, my] = [box.x + box.width / 2, box.y + box.height / 2];
  const reach = Math.hypot(box.width, box.height) / 2;
  const parts: string[] = [];
  for (let off = -reach; off <= reach; off += spacing) {
    const [x, y] = [mx + nx * off, my + ny * off];
    parts.push(
      `M${round2(x - dx * reach)} ${round2(y - dy * reach)}L${round2(x + dx * reach)} ${round2(y + dy * reach)}`,
    );
  }
  return parts.join('');
}
