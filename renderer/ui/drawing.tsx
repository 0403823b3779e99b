import { useLayoutEffect, useRef } from 'react';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { patchDrawing } from './patchDrawing.ts';
import { svgElement } from './svgElement.ts';

interface DrawingProps {
  /** Whole drawing, its root an `svg`; or null for none. */
  readonly node: SvgNode | null;
  readonly className?: string;
  /** What the drawing shows, for those who cannot see it; without it the drawing is decoration. */
  readonly label?: string | undefined;
}

/** Shows a drawing made by pure code; of the next one only what is different is drawn anew. */
export function Drawing({ node, className, label }: DrawingProps): React.JSX.Element {
  const holder = useRef<HTMLDivElement>(null);
  const drawn = useRef<SvgNode | null>(null);
  useLayoutEffect(() => {
    const before = drawn.current;
    const made = holder.current?.firstElementChild ?? null;
    drawn.current = node;
    if (made !== null && before !== null && before.tag === node?.tag) patchDrawing(made, before, node);
    else holder.current?.replaceChildren(...(node === null ? [] : [svgElement(node)]));
  }, [node]);
  return (
    <div
      ref={holder}
      className={className}
      {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}
    />
  );
}
