import type { UnitsPreference } from '../units/preference.ts';
import { group, round2 } from './element.ts';
import { barLengthM } from './frame.ts';
import { plainText, textWidth } from './labels.ts';
import { segment } from './pathData.ts';
import { strokes } from './pattern.ts';
import type { Stop } from './sectionLine.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';

/** A tick for each ball: where it stops along the line. Trouble stands taller, with a cross. */
export function rug(
  stops: readonly Stop[],
  xOf: (alongM: number) => number,
  baseY: number,
  height: number,
  [left, right]: readonly [number, number],
  style: PlateStyle,
  size: number,
): SvgNode | null {
  if (stops.length === 0) return null;
  const { inks } = style;
  const k = style.symbolScale;
  const inside = stops.map((s) => ({ ...s, x: xOf(s.alongM) })).filter(({ x }) => x >= left && x <= right);
  const plain = inside.filter((s) => !s.trouble).map(({ x }) => segment(x, baseY - height, x, baseY));
  const r = 2.6 * k;
  const bad = inside
    .filter((s) => s.trouble)
    .map(
      ({ x }) =>
        segment(x - r, baseY - height - r, x + r, baseY - height + r) +
        segment(x - r, baseY - height + r, x + r, baseY - height - r),
    );
  const firstX = Math.min(...inside.map(({ x }) => x), right);
  const caption = `each tick: where one of ${String(stops.length)} balls stops`;
  const fits = firstX - left > textWidth(caption, size) + 14 * k;
  return group(
    'rug',
    strokes(plain.join(''), inks.propose, 1.1 * k, style.mono ? {} : { 'stroke-opacity': 0.75 }),
    strokes(bad.join(''), inks.propose, 1.4 * k),
    fits ? plainText(caption, firstX - 9 * k, baseY - 2 * k, { size, ink: inks.ink2, anchor: 'end' }) : null,
  );
}

/** Distances from the ball, a figure every five and ticks between. */
export function distanceAxis(
  xOf: (alongM: number) => number,
  y: number,
  farM: number,
  style: PlateStyle,
  units: UnitsPreference,
  size: number,
): SvgNode {
  const { inks } = style;
  const k = style.symbolScale;
  const bar = barLengthM(units);
  const unit = units.system === 'yards' ? 'yd' : 'm';
  const ticks: string[] = [];
  const figures: SvgNode[] = [];
  const every = xOf(bar) - xOf(0) > 26 * k ? 1 : 2;
  for (let i = 0; i * bar <= farM; i += 1) {
    const x = xOf(i * bar);
    ticks.push(segment(x, y, x, y + (i % every === 0 ? 5 : 3) * k));
    if (every === 1 && i > 0)
      for (let j = 1; j < 5; j += 1) ticks.push(minor(xOf((i - 1 + j / 5) * bar), y, k));
    if (i % every === 0)
      figures.push(
        plainText(i === 0 ? `0 ${unit}` : String(5 * i), x, y + 5 * k + size * 0.85, {
          size,
          ink: inks.ink,
          anchor: 'middle',
        }),
      );
  }
  return group(
    'axis',
    strokes(segment(xOf(0), y, xOf(farM), y) + ticks.join(''), inks.ink2, 1.2 * k),
    ...figures,
  );
}

const minor = (x: number, y: number, k: number): string => `M${round2(x)} ${round2(y)}v${round2(3 * k)}`;
