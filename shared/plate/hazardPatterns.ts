import { contours } from 'd3-contour';
import { element, round2 } from './element.ts';
import { closedPath, openPath } from './pathData.ts';
import { depthInside } from './depthInside.ts';
import type { PatternContext } from './pattern.ts';
import { hatch, scatterInside, strokes, visibleBox } from './pattern.ts';
import { cellNoise } from './scatter.ts';
import { distance, signedArea, walk } from './shape.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** Lip hachures: 5 units for a shallow lip, growing 6 a metre, never over 15. */
const hachureLength = (lipHeightM: number | null): number => Math.min(15, 5 + 6 * (lipHeightM ?? 0.2));

/** Sand: stipple, denser at the rim, with tapered hachures inside the lip. */
export function bunkerPattern(context: PatternContext, lipHeightM: number | null): (SvgNode | null)[] {
  const { shape, style, seed, clip } = context;
  const k = style.symbolScale;
  const lip = hachureLength(lipHeightM) * k;
  const dots: string[] = [];
  scatterInside(
    context,
    { spacing: 5.4 * k, wander: 0.95, reach: 1.5 * k, inset: lip * 0.75, most: 5000 },
    (x, y, noise, edge) => {
      const density = 0.3 + 0.65 * Math.exp(-(edge - lip) / (9 * k));
      if (noise(0) < density) dots.push(`M${round2(x)} ${round2(y)}h0`);
    },
  );
  const wedges: string[] = [];
  for (const ring of shape.rings.slice(0, 1)) {
    const inward = signedArea(ring) > 0 ? -1 : 1;
    walk(ring, 3.9 * k).forEach(({ at, tangent }, i) => {
      if (at[0] < clip.x - 20 || at[0] > clip.x + clip.width + 20) return;
      const length = lip * (0.82 + 0.3 * cellNoise(seed, i, 7, 7));
      const half = 1.05 * k;
      const tip: XY = [at[0] + tangent[1] * inward * length, at[1] - tangent[0] * inward * length];
      wedges.push(
        closedPath([
          [
            [at[0] - tangent[0] * half, at[1] - tangent[1] * half],
            tip,
            [at[0] + tangent[0] * half, at[1] + tangent[1] * half],
          ],
        ]),
      );
    });
  }
  return [
    strokes(dots.join(''), style.inks.sand, 1.35 * k, { 'stroke-linecap': 'round' }),
    element('path', { d: wedges.join(''), fill: style.inks.ink }),
  ];
}

/** Distances from the shore at which shore lines lie, widening inward, screen units. */
const shoreDistances = [7.5, 10.5, 14.5, 19.5, 25.5, 33, 42, 53, 66, 82, 101, 124];

/** Water: lines parallel to the shore, wider apart inward; contours of the distance to the edge. */
export function penaltyAreaPattern(context: PatternContext): (SvgNode | null)[] {
  const { shape, style, clip } = context;
  const k = style.symbolScale;
  const box = visibleBox(shape, {
    x: clip.x - 6,
    y: clip.y - 6,
    width: clip.width + 12,
    height: clip.height + 12,
  });
  if (box === null) return [];
  const cell = Math.max(2.4 * k, Math.sqrt((box.width * box.height) / 9000));
  const columns = Math.ceil(box.width / cell) + 3;
  const rows = Math.ceil(box.height / cell) + 3;
  const values = depthInside(shape, { x: box.x - cell, y: box.y - cell, cell, columns, rows });
  const deepest = values.reduce((most, depth) => Math.max(most, depth), 0);
  const levels = Array.from(values);
  const lines = (at: number): string =>
    contours()
      .size([columns, rows])
      .thresholds([at])(levels)
      .flatMap((level) => level.coordinates.flat())
      .map((ring) =>
        // d3-contour puts a sample at the middle of its cell.
        borderless(
          ring.map(([x = 0, y = 0]): XY => [box.x + (x - 1.5) * cell, box.y + (y - 1.5) * cell]),
          box,
          cell,
        ),
      )
      .join('');
  const shore = 4.5 * k;
  const inner = shoreDistances.map((d) => d * k).filter((d) => d < deepest - 1);
  return [
    strokes(lines(Math.min(shore, deepest / 3)), style.inks.ink, 1.3 * k),
    strokes(inner.map(lines).join(''), style.inks.water, 0.95 * k),
  ];
}

/** A contour ring without the stretches that only follow the border of the sampled box. */
function borderless(
  ring: readonly XY[],
  box: { x: number; y: number; width: number; height: number },
  cell: number,
): string {
  const onBorder = ([x, y]: XY): boolean =>
    x < box.x - cell * 0.9 ||
    y < box.y - cell * 0.9 ||
    x > box.x + box.width + cell * 0.9 ||
    y > box.y + box.height + cell * 0.9;
  const runs: XY[][] = [];
  let run: XY[] = [];
  for (const point of ring) {
    if (onBorder(point)) {
      if (run.length > 1) runs.push(run);
      run = [];
    } else run.push(point);
  }
  if (run.length > 1) runs.push(run);
  return runs.map(openPath).join('');
}

/** Out of bounds: cross-hatch beyond a heavy chain line. */
export function outOfBoundsPattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const spacing = 9 * k;
  const d =
    hatch(context, { angleDeg: 45, spacing, dash: Infinity, gap: 0 }) +
    hatch(context, { angleDeg: -45, spacing, dash: Infinity, gap: 0 });
  return [strokes(d, context.style.inks.edge, 0.7 * k)];
}

/** Tree: scalloped crown, arcs on the lee side, trunk dot. */
export function treePattern(context: PatternContext): (SvgNode | null)[] {
  const { shape, style } = context;
  const k = style.symbolScale;
  const ring = shape.rings[0];
  if (ring === undefined) return [];
  const { middle, radius } = roundness(ring);
  const step = Math.min(13 * k, Math.max(5 * k, radius * 0.42));
  const points = walk(ring, step).map((spot) => spot.at);
  const first = points[0];
  if (first === undefined) return [];
  const sweep = signedArea(ring) > 0 ? 1 : 0;
  const bumps = [...points.slice(1), first].map(([x, y], i) => {
    const from = points[i] ?? first;
    const r = distance(from, [x, y]) * 0.56;
    return `A${round2(r)} ${round2(r)} 0 0 ${sweep} ${round2(x)} ${round2(y)}`;
  });
  const arcs = [0.42, 0.56, 0.7, 0.83].map((part, i) => {
    const r = radius * part;
    const spread = 0.62 + 0.05 * i;
    const from = Math.PI / 4 - spread;
    const to = Math.PI / 4 + spread;
    const at = (a: number): string =>
      `${round2(middle[0] + r * Math.cos(a))} ${round2(middle[1] + r * Math.sin(a))}`;
    return `M${at(from)}A${round2(r)} ${round2(r)} 0 0 1 ${at(to)}`;
  });
  return [
    element('path', {
      d: `M${round2(first[0])} ${round2(first[1])}${bumps.join('')}Z`,
      fill: style.inks.fills.tree,
      stroke: style.inks.ink,
      'stroke-width': 1.25 * k,
      'stroke-linejoin': 'round',
    }),
    radius > 12 * k ? strokes(arcs.join(''), style.inks.tall, 0.95 * k, { 'stroke-linecap': 'round' }) : null,
    element('circle', { cx: middle[0], cy: middle[1], r: 2.1 * k, fill: style.inks.ink }),
  ];
}

function roundness(ring: readonly XY[]): { middle: XY; radius: number } {
  const n = ring.length;
  const middle: XY = [ring.reduce((s, p) => s + p[0], 0) / n, ring.reduce((s, p) => s + p[1], 0) / n];
  return { middle, radius: ring.reduce((s, p) => s + distance(p, middle), 0) / n };
}

/** Tee: the mown edge twice, and the two studs of the markers. */
export function teePattern(context: PatternContext): (SvgNode | null)[] {
  const { shape, style } = context;
  const k = style.symbolScale;
  const ring = shape.rings[0];
  if (ring === undefined) return [];
  const { middle, radius } = roundness(ring);
  const scale = Math.max(0.3, 1 - (5.5 * k) / Math.max(radius * 0.6, 1));
  const inner = ring.map(([x, y]): XY => [
    middle[0] + (x - middle[0]) * scale,
    middle[1] + (y - middle[1]) * scale,
  ]);
  const longest = ring
    .map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a }))
    .sort((p, q) => distance(q.a, q.b) - distance(p.a, p.b));
  const side = longest[0];
  const ux = side === undefined ? 1 : (side.b[0] - side.a[0]) / Math.max(distance(side.a, side.b), 0.01);
  const uy = side === undefined ? 0 : (side.b[1] - side.a[1]) / Math.max(distance(side.a, side.b), 0.01);
  const off = radius * 0.32;
  const stud = (sign: number): SvgNode =>
    element('rect', {
      x: middle[0] - uy * off * sign - 1.6 * k,
      y: middle[1] + ux * off * sign - 1.6 * k,
      width: 3.2 * k,
      height: 3.2 * k,
      fill: style.inks.ink,
    });
  return [strokes(closedPath([inner]), style.inks.ink2, 0.9 * k), stud(1), stud(-1)];
}
