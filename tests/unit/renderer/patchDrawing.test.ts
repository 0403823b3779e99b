// @vitest-environment happy-dom
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { svgElement } from '../../../renderer/ui/svgElement.ts';
import { patchDrawing } from '../../../renderer/ui/patchDrawing.ts';
import { element } from '../../../shared/plate/element.ts';
import type { SvgNode } from '../../../shared/plate/svgNode.ts';

/** A few nodes that drawings share, as records keep theirs from edit to edit. */
const shared = Array.from({ length: 6 }, (_, i) => element('path', { d: `M${String(i)} 0`, 'data-id': i }));
const leaf = fc.oneof(
  fc.constantFrom<SvgNode | string>(...shared, 'x', 'y'),
  fc
    .record({ id: fc.nat(3), fill: fc.constantFrom('a', 'b', undefined) })
    .map(({ id, fill }) => element('path', { 'data-id': id, fill })),
);
const drawing = fc
  .array(
    fc.oneof(
      leaf,
      fc.array(leaf, { maxLength: 5 }).map((inner) => element('g', {}, ...inner)),
    ),
    {
      maxLength: 8,
    },
  )
  .map((children) => element('g', {}, ...children));

/** What an element is, whatever order its attributes came in. */
const plain = (node: Element): unknown => [
  node.tagName,
  new Map([...node.attributes].map(({ name, value }) => [name, value])),
  [...node.childNodes].map((child) => (child instanceof Element ? plain(child) : child.textContent)),
];

it('leaves the elements a drawing has when it is made at once, and keeps those it shares', () => {
  fc.assert(
    fc.property(fc.array(drawing, { minLength: 2, maxLength: 4 }), (drawings) => {
      const [first, ...rest] = drawings as [SvgNode, ...SvgNode[]];
      const made = svgElement(first);
      let before = first;
      for (const after of rest) {
        patchDrawing(made, before, after);
        expect(plain(made)).toEqual(plain(svgElement(after)));
        before = after;
      }
    }),
    { numRuns: 60 },
  );
  const [a, b, c] = shared as [SvgNode, SvgNode, SvgNode];
  const made = svgElement(element('g', {}, a, b, c));
  const [, , last] = made.children;
  const before = element('g', {}, a, b, c);
  patchDrawing(made, before, element('g', {}, a, c));
  expect(made.children[1]).toBe(last);
});

it('changes each of several nameless elements into the one in its place', () => {
  const shot = (x: number): SvgNode =>
    element(
      'g',
      {},
      ...['halo', 'ink', 'wash'].map((stroke) => element('path', { d: `M${String(x)} 0`, stroke })),
    );
  const made = svgElement(shot(0));
  const [...paths] = made.children;
  const changed: string[] = [];
  for (const path of paths) {
    const set = path.setAttribute.bind(path);
    path.setAttribute = (name, value) => {
      changed.push(name);
      set(name, value);
    };
  }
  patchDrawing(made, shot(0), shot(1));
  expect([...made.children]).toEqual(paths);
  expect(changed).toEqual(['d', 'd', 'd']);
});
