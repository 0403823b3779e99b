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
