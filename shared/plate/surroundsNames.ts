import { NOTHING_PLAIN } from '../planner/surroundsMap.ts';
import * as format from '../units/format.ts';
import { haloText, textWidth } from './labels.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SurroundsClass, SurroundsLayer } from './surroundsClasses.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box } from './view.ts';
import { overlaps } from './view.ts';

/** Regions smaller than this many cells go without their name. */
const LEAST_NAMED = 14;

/** The name of every region of some size, in its widest place: the middle of the largest square of it. */
export function regionNames(
  { map, by }: SurroundsLayer,
  kinds: readonly SurroundsClass[],
  classes: Uint8Array,
  corner: (column: number, row: number) => readonly [number, number],
  style: PlateStyle,
  keepClear: readonly Box[],
  box: Box,
): SvgNode[] {
  const { columns, rows } = map;
  const size = textSize(style, 13.5);
  const taken: Box[] = [...keepClear];
  const names: SvgNode[] = [];
  const seen = new Uint8Array(classes.length);
  for (let first = 0; first < classes.length; first += 1) {
    const index = classes[first] ?? NOTHING_PLAIN;
    if (index === NOTHING_PLAIN || seen[first] === 1) continue;
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
    const name = kinds.find((kind) => kind.index === index)?.words ?? '';
    const textAt = (cell: number): string =>
      by === 'simple' ? name : format.strokes(map.strokes[cell] ?? NaN).slice(0, 4);
    const placed = region.flatMap((place) => {
      const [x, y] = corner((place % columns) + 0.5, Math.floor(place / columns) + 0.5);
      const text = textAt(place);
      const width = textWidth(text, size);
      const room = { x: x - width / 2 - 3, y: y - size * 0.7, width: width + 6, height: size * 1.3 };
      const inSight =
        room.x >= box.x &&
        room.y >= box.y &&
        room.x + room.width <= box.x + box.width &&
        room.y + room.height <= box.y + box.height;
      return inSight ? [{ x, y, text, room, deep: depth(place) }] : [];
    });
    for (const { x, y, text, room } of placed.sort((a, b) => b.deep - a.deep).slice(0, 40)) {
      if (taken.some((other) => overlaps(other, room))) continue;
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
