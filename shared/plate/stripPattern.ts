import type { Cover } from '../words/vocabulary.ts';
import { round2 } from './element.ts';
import { segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { cellNoise } from './scatter.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** The ground patterns of the map, laid in the strip under a section's ground line. */
export function stripPattern(
  cover: Cover,
  top: readonly XY[],
  depth: number,
  style: PlateStyle,
): (SvgNode | null)[] {
  const { inks } = style;
  const k = style.symbolScale;
  const from = top[0]?.[0] ?? 0;
  const to = top[top.length - 1]?.[0] ?? 0;
  const yAt = (x: number): number => {
    const i = top.findIndex(([px]) => px >= x);
    const b = top[Math.max(i, 0)] ?? [0, 0];
    const a = top[Math.max(i - 1, 0)] ?? b;
    return b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
  };
  const parts: string[] = [];
  const each = (step: number, put: (x: number, y: number, i: number) => void): void => {
    const first = Math.ceil(from / step + 0.3);
    for (let i = first; i * step < to - step * 0.3; i += 1) put(i * step, yAt(i * step), i);
  };
  const rows = (step: number, rowStep: number, length: number, slant: number): void => {
    for (let row = 1; row * rowStep < depth - 1; row += 1)
      each(step, (x, y) => {
        const x1 = x + (row % 2) * step * 0.5 - length / 2;
        const x2 = x1 + length;
        if (x1 < from || x2 > to) return;
        const shift = yAt((x1 + x2) / 2) - y;
        const rise = (slant * length) / 2;
        parts.push(segment(x1, y + shift + row * rowStep + rise, x2, y + shift + row * rowStep - rise));
      });
  };
  const tufts = (step: number, blades: number): void => {
    each(step, (x, y) => {
      for (let b = 0; b < blades; b += 1) {
        const lean = (b - (blades - 1) / 2) * (blades > 3 ? 1.7 : 2.4) * k;
        parts.push(
          segment(
            x + lean * 0.3,
            y + depth * 0.72,
            x + lean,
            y + depth * 0.72 - (6 - Math.abs(lean / k)) * k,
          ),
        );
      }
      if (blades > 3) parts.push(segment(x - 4 * k, y + depth * 0.76, x + 4 * k, y + depth * 0.76));
    });
  };
  switch (cover) {
    case 'green':
    case 'path':
    case 'tee':
      return [];
    case 'fringe':
      each(6 * k, (x, y) => parts.push(segment(x, y + depth * 0.2, x, y + depth * 0.82)));
      return [strokes(parts.join(''), inks.mown, 0.95 * k)];
    case 'approach':
      rows(9 * k, 4.6 * k, 5 * k, 0);
      return [strokes(parts.join(''), inks.mown, 1 * k)];
    case 'fairway':
      rows(22 * k, 6.5 * k, 13 * k, 0.5);
      return [strokes(parts.join(''), inks.mown, 1 * k)];
    case 'lightRough':
      tufts(26 * k, 3);
      return [strokes(parts.join(''), inks.tall, 1.05 * k, { 'stroke-linecap': 'round' })];
    case 'heavyRough':
      tufts(16 * k, 5);
      return [strokes(parts.join(''), inks.tall, 1.05 * k, { 'stroke-linecap': 'round' })];
    case 'bare':
      each(9 * k, (x, y, i) => {
        const r = 2.2 * k;
        const cy = y + depth * (0.35 + 0.35 * cellNoise(3, i, 0, 0));
        parts.push(
          `M${round2(x - r)} ${round2(cy + r)}L${round2(x)} ${round2(cy - r)}L${round2(x + r)} ${round2(cy + r)}Z`,
        );
      });
      return [strokes(parts.join(''), inks.sand, 0.85 * k)];
    case 'bunker':
      each(2.6 * k, (x, y, i) => {
        parts.push(`M${round2(x)} ${round2(y + 2 * k + (depth - 4 * k) * cellNoise(5, i, 1, 0))}h0`);
      });
      return [strokes(parts.join(''), inks.sand, 1.35 * k, { 'stroke-linecap': 'round' })];
    case 'penaltyArea':
      for (let row = 1; row < 4; row += 1)
        parts.push(segment(from, yAt(from) + row * row * 1.5 * k, to, yAt(to) + row * row * 1.5 * k));
      return [strokes(parts.join(''), inks.water, 0.95 * k)];
    case 'outOfBounds':
      each(6 * k, (x, y) => {
        if (x + depth * 0.5 <= to && x - depth * 0.5 >= from)
          parts.push(
            segment(x - depth * 0.5, y + depth, x + depth * 0.5, y + 1),
            segment(x - depth * 0.5, y + 1, x + depth * 0.5, y + depth),
          );
      });
      return [strokes(parts.join(''), inks.edge, 0.7 * k)];
  }
}
