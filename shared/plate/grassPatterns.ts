import { round2 } from './element.ts';
import { segment } from './pathData.ts';
import type { PatternContext } from './pattern.ts';
import { hatch, scatterInside, strokes } from './pattern.ts';
import { rayHit, signedArea, walk } from './shape.ts';
import type { Shape } from './shape.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** A blade from the foot of a tuft, curving outward to its tip. */
const blade = (x: number, y: number, lean: number, height: number): string =>
  `M${round2(x)} ${round2(y)}q${round2(lean * 0.15)} ${round2(-height * 0.62)} ${round2(lean)} ${round2(-height)}`;

/** Light rough: tufts of three blades, 40 apart. */
export function lightRoughPattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const parts: string[] = [];
  scatterInside(context, { spacing: 40 * k, wander: 0.72, reach: 6 * k, inset: 5 * k }, (x, y, noise) => {
    const size = (0.88 + 0.28 * noise(0)) * k;
    parts.push(
      blade(x - 0.8 * size, y, -3.4 * size, 4.6 * size),
      blade(x, y, (noise(1) - 0.5) * 1.4 * size, 6.4 * size),
      blade(x + 0.8 * size, y, 3.4 * size, 4.6 * size),
    );
  });
  return [strokes(parts.join(''), context.style.inks.tall, 1.05 * k, { 'stroke-linecap': 'round' })];
}

/** Heavy rough: tufts of five blades on a foot line, 21 apart. */
export function heavyRoughPattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const parts: string[] = [];
  scatterInside(context, { spacing: 21 * k, wander: 0.62, reach: 7 * k, inset: 6 * k }, (x, y, noise) => {
    const size = (0.88 + 0.3 * noise(0)) * k;
    parts.push(
      blade(x - 1.8 * size, y, -4.4 * size, 4.4 * size),
      blade(x - 0.9 * size, y, -2.1 * size, 6.8 * size),
      blade(x, y, (noise(1) - 0.5) * 1.2 * size, 8.2 * size),
      blade(x + 0.9 * size, y, 2.1 * size, 6.8 * size),
      blade(x + 1.8 * size, y, 4.4 * size, 4.4 * size),
      segment(x - 4.4 * size, y + 0.6 * size, x + 4.4 * size, y + 0.6 * size),
    );
  });
  return [strokes(parts.join(''), context.style.inks.tall, 1.05 * k, { 'stroke-linecap': 'round' })];
}

/** Approach: level dashes of 5, staggered. */
export function approachPattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const d = hatch(context, { angleDeg: 0, spacing: 6.2 * k, dash: 5.6 * k, gap: 4 * k });
  return [strokes(d, context.style.inks.mown, 1 * k)];
}

/** Fairway: slanted dashes of 15, wide apart. */
export function fairwayPattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const d = hatch(context, { angleDeg: -30, spacing: 10 * k, dash: 15 * k, gap: 9 * k });
  return [strokes(d, context.style.inks.mown, 1 * k)];
}

/** Bare ground: small open triangles. */
export function barePattern(context: PatternContext): (SvgNode | null)[] {
  const k = context.style.symbolScale;
  const parts: string[] = [];
  scatterInside(context, { spacing: 9 * k, wander: 0.5, reach: 3 * k, inset: 3.6 * k }, (x, y, noise) => {
    const r = (1.9 + 0.9 * noise(0)) * k;
    parts.push(
      `M${round2(x - r)} ${round2(y + r * 0.8)}L${round2(x)} ${round2(y - r)}L${round2(x + r)} ${round2(y + r * 0.8)}Z`,
    );
  });
  return [strokes(parts.join(''), context.style.inks.sand, 0.85 * k)];
}

/** Widest band drawn as a ladder right across, screen units. */
const widestLadder = 26;

/**
 * Fringe: a tick every 6 across the band. The band runs from the fringe's outer edge to the green inside it (or to the
 * fringe's own inner ring where it was traced as a collar).
 */
export function fringePattern(context: PatternContext, greens: readonly Shape[]): (SvgNode | null)[] {
  const { shape, style } = context;
  const k = style.symbolScale;
  const outer = shape.rings[0];
  if (outer === undefined) return [];
  const parts: string[] = [];
  const inners = shape.rings.slice(1).concat(greens.flatMap((green) => green.rings.slice(0, 1)));
  for (const inner of inners) {
    const outward = outwardSign(inner);
    for (const { at, tangent } of walk(inner, 6 * k)) {
      const dx = tangent[1] * outward;
      const dy = -tangent[0] * outward;
      const reach = rayHit(shape, [at[0] + dx * 0.5, at[1] + dy * 0.5], dx, dy) + 0.5;
      if (!(reach > 3 * k)) continue;
      const width = Math.min(reach, widestLadder * k);
      const from = width * 0.2;
      const to = width * 0.82;
      parts.push(segment(at[0] + dx * from, at[1] + dy * from, at[0] + dx * to, at[1] + dy * to));
    }
  }
  if (inners.length === 0) {
    const inward = -outwardSign(outer);
    for (const { at, tangent } of walk(outer, 6 * k)) {
      const dx = tangent[1] * inward;
      const dy = -tangent[0] * inward;
      parts.push(segment(at[0] + dx * 2 * k, at[1] + dy * 2 * k, at[0] + dx * 10 * k, at[1] + dy * 10 * k));
    }
  }
  return [strokes(parts.join(''), style.inks.mown, 0.95 * k)];
}

/** +1 when (ty, -tx) points out of the ring for a tangent (tx, ty): with y down, a positive area runs clockwise. */
const outwardSign = (ring: readonly XY[]): 1 | -1 => (signedArea(ring) > 0 ? 1 : -1);
