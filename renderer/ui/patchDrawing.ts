import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { svgElement } from './svgElement.ts';

type Child = SvgNode | string;

/**
 * Makes the elements of one drawing into those of the next. Drawings share what did not change, so that an edit touches only
 * the elements it is about: the browser lays out and paints no others.
 */
export function patchDrawing(made: Element, before: SvgNode, after: SvgNode): void {
  if (before === after) return;
  const old = before.attributes;
  const now = after.attributes;
  for (const name in now) if (old[name] !== now[name]) made.setAttribute(name, String(now[name]));
  for (const name in old) if (now[name] === undefined) made.removeAttribute(name);
  patchChildren(made, before.children, after.children);
}

function patchChildren(parent: Element, before: readonly Child[], after: readonly Child[]): void {
  if (before === after) return;
  let from = 0;
  while (from < before.length && from < after.length && before[from] === after[from]) from += 1;
  let oldEnd = before.length;
  let newEnd = after.length;
  while (oldEnd > from && newEnd > from && before[oldEnd - 1] === after[newEnd - 1]) {
    oldEnd -= 1;
    newEnd -= 1;
  }
  const nodes = parent.childNodes;
  const left = new Map<Child, ChildNode>();
  const gone = new Set<ChildNode>();
  for (let i = from; i < oldEnd; i += 1) {
    const [child, node] = [before[i], nodes[i]];
    if (child === undefined || node === undefined) continue;
    // Of children twice the same, the second is made anew.
    if (!left.has(child)) left.set(child, node);
    gone.add(node);
  }
  const wanted = after.slice(from, newEnd);
  const kept = wanted.map((child) => {
    const node = left.get(child);
    if (node === undefined) return null;
    left.delete(child);
    gone.delete(node);
    return node;
  });
  const alike = new Map<string, [SvgNode, ChildNode][]>();
  for (const [child, node] of left)
    if (typeof child !== 'string')
      alike.set(nameOf(child), [...(alike.get(nameOf(child)) ?? []), [child, node]]);
  // In their order, so that of several under one name each is changed into the one in its place.
  const there = wanted.map((child, i) => kept[i] ?? changedOrNew(child, alike, gone));
  let at: ChildNode | null = nodes[oldEnd] ?? null;
  for (const node of there.reverse()) {
    if (node.parentNode !== parent || node.nextSibling !== at) parent.insertBefore(node, at);
    at = node;
  }
  for (const node of gone) node.remove();
}

/** An element that was there under the same name, changed; else a new one. */
function changedOrNew(
  child: Child,
  alike: ReadonlyMap<string, [SvgNode, ChildNode][]>,
  gone: Set<ChildNode>,
): ChildNode {
  if (typeof child === 'string') return document.createTextNode(child);
  const [old, node] = alike.get(nameOf(child))?.shift() ?? [];
  if (old === undefined || !(node instanceof Element)) return svgElement(child);
  gone.delete(node);
  patchDrawing(node, old, child);
  return node;
}

const nameOf = ({ tag, attributes }: SvgNode): string =>
  `${tag} ${attributes['data-part'] ?? ''} ${attributes['data-id'] ?? ''}`;
