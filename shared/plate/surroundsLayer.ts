import { planePoint } from '../geometry/points.ts';
import { techniqueName } from '../planner/optionName.ts';
import type { SurroundsMap } from '../planner/surroundsMap.ts';
import * as format from '../units/format.ts';
import { techniques } from '../words/vocabulary.ts';
import { element, group, round2 } from './element.ts';
import { haloText, textWidth } from './labels.ts';
import { strokes } from './pattern.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView } from './view.ts';
import { overlaps, projection } from './view.ts';

/** A map of the surrounds as it is shown: by strokes to hole out, or by the simplest shot that is good enough. */
export interface SurroundsLayer {
  readonly map: SurroundsMap;
  readonly by: 'strokes' | 'simple';
}

/** One class of the layer: how it is hatched, and what it means. */
export interface SurroundsClass {
  readonly words: string;
  readonly hatch: readonly { readonly angleDeg: number; readonly spacing: number }[];
}

const NONE = 255;
const STROKE_CLASSES = 5;
/** Regions smaller than this many cells go without their name. */
const LEAST_NAMED = 14;

const line = (angleDeg: number, spacing: number): SurroundsClass['hatch'] => [{ angleDeg, spacing }];
/** More strokes, denser lines; it reads without colour. */
const denser: readonly SurroundsClass['hatch'][] = [[], line(90, 13), line(90, 8), line(90, 5), line(90, 3)];
const techniqueHatch: readonly SurroundsClass['hatch'][] = [
  [],
  line(90, 9),
  line(45, 8),
  line(-45, 8),
  [...line(45, 9), ...line(-45, 9)],
  [...line(0, 8), ...line(90, 8)],
  line(0, 4),
];

/** Strokes at which one class ends and the next begins: even steps of a twentieth from the cheapest ground up. */
function breaksOf({ strokes: values }: SurroundsMap): readonly number[] {
  const sorted = Array.from(values)
    .filter((value) => Number.isFinite(value))
    .sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? 2;
  const low = at(0.05);
  const step = Math.max(0.05, (at(0.95) - low) / STROKE_CLASSES);
  return Array.from({ length: STROKE_CLASSES - 1 }, (_, i) => Math.round((low + step * (i + 1)) * 20) / 20);
}

/** The classes of a layer that occur in it, with what to call them. */
export function surroundsClasses(layer: SurroundsLayer): readonly SurroundsClass[] {
  const { map, by } = layer;
  if (by === 'simple') {
    const seen = new Set(map.simple);
    return techniques.flatMap((technique, i) =>
      seen.has(i) ? [{ words: techniqueName(technique), hatch: techniqueHatch[i] ?? [] }] : [],
    );
  }
  const breaks = breaksOf(map);
  return denser.map((hatch, i) => {
    const [from, to] = [breaks[i - 1], breaks[i]];
    const words =
      from === undefined
        ? `under ${format.strokes(to ?? 0)}`
        : to === undefined
          ? `over ${format.strokes(from)}`
          : `${format.strokes(from)} to ${format.strokes(to)}`;
    return { words, hatch };
  });
}

function classOfCells({ map, by }: SurroundsLayer): Uint8Array {
  if (by === 'simple') return map.simple;
  const breaks = breaksOf(map);
  return Uint8Array.from(map.strokes, (value) =>
    Number.isFinite(value) ? breaks.filter((limit) => value >= limit).length : NONE,
  );
}

/** The layer over the ground: every class in its own hatching, edges between classes, and what each region is. */
export function drawSurrounds(
  view: PlateView,
  style: PlateStyle,
  layer: SurroundsLayer,
  keepClear: readonly Box[],
): SvgNode {
  const { map, by } = layer;
  const { columns, rows, westM, southM, cellM } = map;
  const classes = classOfCells(layer);
  const { toDrawing } = projection(view);
  const corner = (column: number, row: number): readonly [number, number] =>
    toDrawing(planePoint(westM + column * cellM, southM + row * cellM));
  const at = (column: number, row: number): number =>
    column < 0 || row < 0 || column >= columns || row >= rows
      ? NONE
      : (classes[row * columns + column] ?? NONE);

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
      if (here === NONE) continue;
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
  const hatched = [...cells].flatMap(([index, list]) => {
    const hatch = by === 'simple' ? techniqueHatch[index] : denser[index];
    const id = `${style.idPrefix}-surrounds-${index}`;
    const tint = style.inks.slopes[index - 1];
    const area = list.join('');
    return [
      element('clipPath', { id }, element('path', { d: area })),
      by === 'strokes' && tint !== undefined
        ? element('path', { d: area, fill: tint.fill, 'fill-opacity': tint.opacity })
        : null,
      element(
        'g',
        { 'clip-path': `url(#${id})` },
        ...(hatch ?? []).map(({ angleDeg, spacing }) =>
          strokes(hatchLines(view.box, angleDeg, spacing * k), style.inks.ink2, 0.8 * k, {
            'stroke-opacity': 0.55,
          }),
        ),
      ),
    ];
  });
  return group(
    'surrounds',
    ...hatched,
    strokes(edges.join(''), style.inks.ink2, 1.1 * k, {}),
    ...regionNames(layer, classes, corner, style, keepClear, view.box),
  );
}

/** Parallel lines over a box; 0 is upright, 90 level. */
export function hatchLines(box: Box, angleDeg: number, spacing: number): string {
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

/** The name of every region of some size, in its widest place: the middle of the largest square of it. */
function regionNames(
  layer: SurroundsLayer,
  classes: Uint8Array,
  corner: (column: number, row: number) => readonly [number, number],
  style: PlateStyle,
  keepClear: readonly Box[],
  box: Box,
): SvgNode[] {
  const { map, by } = layer;
  const { columns, rows } = map;
  const size = textSize(style, 13.5);
  const taken: Box[] = [...keepClear];
  const names: SvgNode[] = [];
  const seen = new Uint8Array(classes.length);
  for (let first = 0; first < classes.length; first += 1) {
    const index = classes[first] ?? NONE;
    if (index === NONE || seen[first] === 1) continue;
    const region = [first];
    seen[first] = 1;
    for (const cell of region) {
      const column = cell % columns;
      for (const next of [
        column > 0 ? cell - 1 : -1,
        column < columns - 1 ? cell + 1 : -1,
        cell - columns,
        cell + columns,
      ]) {
        if (next < 0 || next >= rows * columns || seen[next] === 1 || classes[next] !== index) continue;
        seen[next] = 1;
        region.push(next);
      }
    }
    if (region.length < LEAST_NAMED) continue;
    const inside = new Set(region);
    const depth = (cell: number): number => {
      for (let r = 1; ; r += 1) {
        for (let d = -r; d <= r; d += 1)
          for (const other of [
            cell + d + r * columns,
            cell + d - r * columns,
            cell + r + d * columns,
            cell - r + d * columns,
          ])
            if (!inside.has(other)) return r;
      }
    };
    const mean = (cell: number): string =>
      by === 'simple'
        ? techniqueName(techniques[index] ?? 'chip')
        : format.strokes(map.strokes[cell] ?? NaN).slice(0, 4);
    for (const cell of region
      .map((place) => ({ place, deep: depth(place) }))
      .sort((a, b) => b.deep - a.deep)
      .slice(0, 40)) {
      const [x, y] = corner((cell.place % columns) + 0.5, Math.floor(cell.place / columns) + 0.5);
      const text = mean(cell.place);
      const width = textWidth(text, size);
      const room = { x: x - width / 2 - 3, y: y - size * 0.7, width: width + 6, height: size * 1.3 };
      const out =
        room.x < box.x ||
        room.y < box.y ||
        room.x + room.width > box.x + box.width ||
        room.y + room.height > box.y + box.height;
      if (out || taken.some((other) => overlaps(other, room))) continue;
      taken.push(room);
      names.push(
        haloText(text, x, y + size * 0.35, style, {
          size,
          weight: 600,
          ink: style.inks.ink,
          anchor: 'middle',
        }),
      );
      break;
    }
  }
  return names;
}
