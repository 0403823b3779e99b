import { haloText, textWidth } from './labels.ts';
import type { ReliefDrawing } from './relief.ts';
import { contains, distance, type Shape } from './shape.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import { type Box, boxContains, grown, overlaps, type PlateView, projection, type XY } from './view.ts';

/** The heights written in the heavy contours, each on the straightest free stretch of its longest line. */
export function contourLabels(
  view: PlateView,
  style: PlateStyle,
  relief: ReliefDrawing,
  greens: readonly Shape[],
  keepClear: readonly Box[],
): { labels: SvgNode[]; busy: Box[] } {
  const { toDrawing } = projection(view);
  const size = textSize(style, 13);
  const labels: SvgNode[] = [];
  const busy: Box[] = [];
  for (const contour of relief.contours) {
    if (!contour.heavy || contour.label === '') continue;
    const width = textWidth(contour.label, size, 'serifItalic');
    const drawn = contour.lines
      .map((line) => line.map(toDrawing))
      .map(measured)
      .filter(({ length }) => length > width * 2.4)
      .sort((a, b) => b.length - a.length)[0];
    if (drawn === undefined) continue;
    const spot = labelSpot(drawn, width, (box) => {
      const inGreen = greens.some(
        (green) =>
          contains(green, box.x + box.width / 2 - width / 2, box.y + box.height / 2) &&
          contains(green, box.x + box.width / 2 + width / 2, box.y + box.height / 2),
      );
      return (
        inGreen &&
        boxContains(view.box, [box.x, box.y]) &&
        boxContains(view.box, [box.x + box.width, box.y + box.height]) &&
        ![...keepClear, ...busy].some((other) => overlaps(box, other))
      );
    });
    if (spot === null) continue;
    busy.push(spot.box);
    labels.push(
      haloText(contour.label, spot.at[0], spot.at[1] + size * 0.33, style, {
        size,
        face: 'serifItalic',
        ink: style.inks.contourHeavy,
        anchor: 'middle',
        turnDeg: spot.turnDeg,
        haloWidth: size * 0.42,
      }),
    );
  }
  return { labels, busy };
}

export const lineLength = (line: readonly XY[]): number =>
  line.reduce((sum, point, i) => sum + (i === 0 ? 0 : distance(line[i - 1] ?? point, point)), 0);

/** A line with how far along it each of its points lies. */
interface MeasuredLine {
  readonly line: readonly XY[];
  readonly along: Float64Array;
  readonly length: number;
}

function measured(line: readonly XY[]): MeasuredLine {
  const along = new Float64Array(line.length);
  let length = 0;
  line.forEach((point, i) => {
    length += distance(line[i - 1] ?? point, point);
    along[i] = length;
  });
  return { line, along, length };
}

/** The straightest allowed stretch of a line about as long as its label. */
function labelSpot(
  line: MeasuredLine,
  width: number,
  allowed: (box: Box) => boolean,
): { at: XY; turnDeg: number; box: Box } | null {
  let best: { at: XY; turnDeg: number; box: Box; bend: number } | null = null;
  const stations = 24;
  const total = line.length;
  for (let i = 2; i < stations - 1; i += 1) {
    const middle = (total * i) / stations;
    const a = pointAlong(line, middle - width / 2);
    const m = pointAlong(line, middle);
    const b = pointAlong(line, middle + width / 2);
    const chord = Math.max(distance(a, b), 0.01);
    const bend = Math.abs((b[0] - a[0]) * (m[1] - a[1]) - (b[1] - a[1]) * (m[0] - a[0])) / chord;
    let turnDeg = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    if (turnDeg > 90) turnDeg -= 180;
    if (turnDeg < -90) turnDeg += 180;
    const half = Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]), 12) / 2;
    const box = grown({ x: m[0], y: m[1], width: 0, height: 0 }, half);
    // Text close to upright reads poorly; prefer level stretches.
    const cost = bend + Math.abs(turnDeg) / 30;
    if ((best === null || cost < best.bend) && allowed(box)) best = { at: m, turnDeg, box, bend: cost };
  }
  return best;
}

function pointAlong({ line, along }: MeasuredLine, wanted: number): XY {
  let [from, to] = [0, line.length - 1];
  if (to < 1) return line[0] ?? [0, 0];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if ((along[middle] ?? 0) < wanted) from = middle;
    else to = middle;
  }
  const a = line[from] as XY;
  const b = line[to] as XY;
  const start = along[from] ?? 0;
  const length = (along[to] ?? 0) - start;
  const t = length > 0 ? Math.min(1, Math.max(0, (wanted - start) / length)) : 0;
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** Small boxes along lines, for texts to keep clear of. */
export function lineBoxes(lines: readonly (readonly XY[])[], half: number): Box[] {
  return lines.flatMap((line) => {
    const whole = measured(line);
    const count = Math.ceil(whole.length / (2 * half));
    return Array.from({ length: count + 1 }, (_, i) => {
      const [x, y] = pointAlong(whole, i * 2 * half);
      return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
    });
  });
}
