import { element, group } from './element.ts';
import { plainText, textWidth } from './labels.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SurroundsClass } from './surroundsClasses.ts';
import { drawHatch } from './surroundsLayer.ts';
import type { SvgNode } from './svgNode.ts';

const SWATCH = { width: 22, height: 15 };
/** A swatch is small: lines no wider apart than this. */
const WIDEST_SPACING = 6;

/** A patch of one class, its top left at the origin. */
export function surroundsSwatch({ hatch, tint }: SurroundsClass, style: PlateStyle): SvgNode {
  const { inks } = style;
  const box = { x: 0, y: 0, ...SWATCH };
  const ink = inks.slopes[tint - 1];
  return element(
    'svg',
    { ...SWATCH, viewBox: `0 0 ${SWATCH.width} ${SWATCH.height}` },
    element('rect', { ...SWATCH, fill: inks.sheet }),
    ink === undefined ? null : element('rect', { ...SWATCH, fill: ink.fill, 'fill-opacity': ink.opacity }),
    ...hatch.map((lines) => drawHatch(lines, box, Math.min(lines.spacing, WIDEST_SPACING), inks.ink2, 0.8)),
    element('rect', {
      x: 0.5,
      y: 0.5,
      width: SWATCH.width - 1,
      height: SWATCH.height - 1,
      fill: 'none',
      stroke: inks.ink2,
    }),
  );
}

/** The plate with the key of its map of the surrounds beneath it, so that a picture speaks for itself. */
export function withSurroundsKey(
  plate: SvgNode,
  title: string,
  classes: readonly SurroundsClass[],
  style: PlateStyle,
): SvgNode {
  const k = style.symbolScale;
  const size = textSize(style, 13.5);
  const row = 24 * k;
  const width = Number(plate.attributes['width']);
  const height = Number(plate.attributes['height']);
  const left = 16 * k;
  const look = { size, ink: style.inks.ink };
  let x = left + textWidth(title, size) * 1.1 + 18 * k;
  let y = height + row / 2;
  const entries = classes.map((kind) => {
    const wide = SWATCH.width + 6 * k + textWidth(kind.words, size) + 16 * k;
    if (x + wide > width && x > left) [x, y] = [left, y + row];
    const entry = group(
      'key-entry',
      element('g', { transform: `translate(${x} ${y - SWATCH.height / 2})` }, surroundsSwatch(kind, style)),
      plainText(kind.words, x + SWATCH.width + 6 * k, y + size * 0.35, look),
    );
    x += wide;
    return entry;
  });
  const whole = y + row / 2 + 6 * k;
  return {
    ...plate,
    attributes: { ...plate.attributes, height: whole, viewBox: `0 0 ${width} ${whole}` },
    children: [
      ...plate.children,
      group(
        'surrounds-key',
        plainText(title, left, height + row / 2 + size * 0.35, { ...look, weight: 600 }),
        ...entries,
      ),
    ],
  };
}
