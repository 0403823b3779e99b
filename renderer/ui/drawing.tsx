import { useLayoutEffect, useRef } from 'react';
import type { SvgNode } from '../../shared/plate/svgNode.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** A drawing as live elements. Text goes in as text nodes, so a name can hold anything. */
export function svgElement(node: SvgNode): SVGElement {
  const made = document.createElementNS(SVG, node.tag);
  for (const [name, value] of Object.entries(node.attributes)) made.setAttribute(name, String(value));
  for (const child of node.children) {
    made.append(typeof child === 'string' ? document.createTextNode(child) : svgElement(child));
  }
  return made;
}

interface DrawingProps {
  /** Whole drawing, its root an `svg`; or null for none. */
  readonly node: SvgNode | null;
  readonly className?: string;
  /** What the drawing shows, for those who cannot see it; without it the drawing is decoration. */
  readonly label?: string | undefined;
}

/** Shows a drawing made by pure code. */
export function Drawing({ node, className, label }: DrawingProps): React.JSX.Element {
  const holder = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    holder.current?.replaceChildren(...(node === null ? [] : [svgElement(node)]));
  }, [node]);
  return (
    <div
      ref={holder}
      className={className}
      {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}
    />
  );
}
