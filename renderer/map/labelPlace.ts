import type { Box, XY } from '../../shared/plate/view.ts';

/** The label keeps this far from what is drawn, and this far from the edge of the plate, CSS px. */
const CLEAR = 8;
const APART = 22;
const EDGE = 6;

/**
 * The top left of a label about a place: below what is drawn if it covers none of it there, else above or beside it, else
 * in a corner of the plate; where nothing is free, wherever it covers least.
 */
export function labelPlace(
  [x, y]: XY,
  { width, height }: Pick<Box, 'width' | 'height'>,
  within: Box,
  lines: readonly (readonly XY[])[],
): XY {
  const all = lines.flat();
  const xs = all.map((at) => at[0]);
  const ys = all.map((at) => at[1]);
  const [west, east] = [Math.min(x, ...xs), Math.max(x, ...xs)];
  const [top, bottom] = [Math.min(y, ...ys), Math.max(y, ...ys)];
  const middle = (top + bottom - height) / 2;
  const farRight = within.x + within.width;
  const farDown = within.y + within.height;
  const wanted: readonly XY[] = [
    [x - width / 2, bottom + APART],
    [x - width / 2, top - APART - height],
    [east + APART, middle],
    [west - APART - width, middle],
    [within.x, farDown],
    [farRight, farDown],
    [farRight, within.y],
    [within.x, within.y],
  ];
  let best: XY = [x, y];
  let least = Infinity;
  for (const [left, up] of wanted) {
    const at: XY = [
      Math.max(within.x + EDGE, Math.min(left, farRight - width - EDGE)),
      Math.max(within.y + EDGE, Math.min(up, farDown - height - EDGE)),
    ];
    const kept = { x: at[0] - CLEAR, y: at[1] - CLEAR, width: width + 2 * CLEAR, height: height + 2 * CLEAR };
    const covered = lines.reduce((sum, line) => sum + sidesWithin(line, kept), 0);
    if (covered < least) [best, least] = [at, covered];
    if (covered === 0) break;
  }
  return best;
}

/** How many sides of a line run through a box; a line of one point counts as a side. */
function sidesWithin(line: readonly XY[], box: Box): number {
  let count = 0;
  for (const [i, to] of line.entries())
    if (i > 0 || line.length === 1) count += meets(line[i - 1] ?? to, to, box) ? 1 : 0;
  return count;
}

function meets([ax, ay]: XY, [bx, by]: XY, { x, y, width, height }: Box): boolean {
  // The part of the side within the box in each direction, as shares of its length.
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [ax, bx - ax, x, x + width],
    [ay, by - ay, y, y + height],
  ] as const) {
    if (step === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [one, other] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from <= to;
}
