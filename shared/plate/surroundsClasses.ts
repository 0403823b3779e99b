import { techniqueName } from '../planner/optionName.ts';
import { DEPENDS_ON_FLAG, NOTHING_PLAIN, type SurroundsMap } from '../planner/surroundsMap.ts';
import * as format from '../units/format.ts';
import { techniques } from '../words/vocabulary.ts';

/** A map of the surrounds as it is shown: by strokes to hole out, or by the simplest shot that is good enough. */
export interface SurroundsLayer {
  readonly map: SurroundsMap;
  readonly by: 'strokes' | 'simple';
}

/** Parallel lines, or rows of dots. */
export interface HatchLines {
  readonly angleDeg: number;
  readonly spacing: number;
  readonly dotted?: true;
}

/** One class of the layer: how it is hatched and tinted, and what it means. */
export interface SurroundsClass {
  /** As in `surroundsCells`. */
  readonly index: number;
  readonly words: string;
  readonly hatch: readonly HatchLines[];
  /** Step of the slope tints, 0 for none. */
  readonly tint: number;
}

const STROKE_CLASSES = 5;

const line = (angleDeg: number, spacing: number): readonly HatchLines[] => [{ angleDeg, spacing }];
/** More strokes, denser lines; it reads without colour. */
const denser: readonly (readonly HatchLines[])[] = [[], line(90, 13), line(90, 8), line(90, 5), line(90, 3)];
const techniqueHatch: readonly (readonly HatchLines[])[] = [
  [],
  line(90, 9),
  line(45, 8),
  line(-45, 8),
  [...line(45, 9), ...line(-45, 9)],
  [...line(0, 8), ...line(90, 8)],
  line(0, 4),
];
/** Dots for what is not settled; every settled class has lines. */
const dots: readonly HatchLines[] = [{ angleDeg: 90, spacing: 6, dotted: true }];

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

/** The classes of a layer, with what to call them: by strokes all of them, by the shot those that occur. */
export function surroundsClasses({ map, by }: SurroundsLayer): readonly SurroundsClass[] {
  if (by === 'simple') {
    const seen = new Set(map.simple);
    return [
      ...techniques.map((technique, index) => ({
        index,
        words: techniqueName(technique),
        hatch: techniqueHatch[index] ?? [],
        tint: 0,
      })),
      { index: DEPENDS_ON_FLAG, words: 'Depends on the flag', hatch: dots, tint: 0 },
    ].filter(({ index }) => seen.has(index));
  }
  const breaks = breaksOf(map);
  return denser.map((hatch, index) => {
    const [from, to] = [breaks[index - 1], breaks[index]];
    const words =
      from === undefined
        ? `under ${format.strokes(to ?? 0)}`
        : to === undefined
          ? `over ${format.strokes(from)}`
          : `${format.strokes(from)} to ${format.strokes(to)}`;
    return { index, words, hatch, tint: index };
  });
}

/** The class of every cell, NOTHING_PLAIN for none. */
export function surroundsCells({ map, by }: SurroundsLayer): Uint8Array {
  if (by === 'simple') return map.simple;
  const breaks = breaksOf(map);
  return Uint8Array.from(map.strokes, (value) =>
    Number.isFinite(value) ? breaks.filter((limit) => value >= limit).length : NOTHING_PLAIN,
  );
}
