import type { Cover } from '../words/vocabulary.ts';
import { covers } from '../words/vocabulary.ts';
import { coverWords } from '../words/coverWords.ts';
import { element, group } from './element.ts';
import { plainText, textWidth } from './labels.ts';
import { openPath, segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import { stripPattern } from './stripPattern.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** The ground strip: patterns of each cover under the line, its name below where there is room. */
export function coverStrip(
  codes: Uint8Array,
  groundLine: readonly XY[],
  depth: number,
  nameSize: number,
  style: PlateStyle,
): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const runs: { cover: Cover; from: number; to: number }[] = [];
  codes.forEach((code, i) => {
    const cover = covers[code] ?? 'lightRough';
    const last = runs[runs.length - 1];
    if (last?.cover === cover) last.to = i;
    else runs.push({ cover, from: i, to: i });
  });
  const parts = runs.map(({ cover, from, to }, n) => {
    const top = groundLine.slice(from, Math.min(to + 2, groundLine.length));
    const bottom = [...top].reverse().map(([x, y]): XY => [x, y + depth]);
    const first = top[0] ?? [0, 0];
    const last = top[top.length - 1] ?? first;
    const name = coverWords[cover];
    const wide = last[0] - first[0] > textWidth(name, nameSize, 'serifItalic') + 8 * k;
    const middle = top[Math.floor(top.length / 2)] ?? first;
    return element(
      'g',
      { 'data-cover': cover },
      element('path', { d: `${openPath([...top, ...bottom])}Z`, fill: inks.fills[cover] }),
      ...stripPattern(cover, top, depth, style),
      n > 0 ? strokes(segment(first[0], first[1], first[0], first[1] + depth), inks.edge, 1 * k) : null,
      wide
        ? plainText(name, middle[0], middle[1] + depth + nameSize * 1.05, {
            size: nameSize,
            face: 'serifItalic',
            ink: inks.ink2,
            anchor: 'middle',
          })
        : null,
    );
  });
  const under = groundLine.map(([x, y]): XY => [x, y + depth]);
  return group('strip', ...parts, strokes(openPath(under), inks.edge, 1.1 * k));
}
