import type { SvgNode } from './svgNode.ts';

type AttributeValue = string | number | undefined;

/** Two decimals are finer than any printer at these sizes, and keep drawings small and equal on every machine. */
export const round2 = (value: number): number => Math.round(value * 100) / 100 + 0;

/** An element; numbers are rounded to two decimals and absent attributes left out. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, AttributeValue>>,
  ...children: readonly (SvgNode | string | null)[]
): SvgNode {
  const kept: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) kept[name] = typeof value === 'number' ? round2(value) : value;
  }
  return { tag, attributes: kept, children: children.filter((child) => child !== null) };
}

/** A group named by its part in the drawing, for tests and for finding it in the window. */
export function group(part: string, ...children: readonly (SvgNode | null)[]): SvgNode {
  return element('g', { 'data-part': part }, ...children);
}
