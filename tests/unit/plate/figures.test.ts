import { expect, it } from 'vitest';
import { drawLeaves } from '../../../shared/plate/leavesChart.ts';
import { leaveShares } from '../../../shared/plate/leaveShares.ts';
import { drawStance } from '../../../shared/plate/stanceFigure.ts';
import { screenStyle } from '../../../shared/plate/style.ts';
import type { SvgNode } from '../../../shared/plate/svgNode.ts';
import { setUpPointers } from '../../../shared/planner/setUpPointers.ts';
import { coverCode, techniques } from '../../../shared/words/vocabulary.ts';

const yards = { system: 'yards', paceM: 0.9 } as const;
const all = (node: SvgNode): SvgNode[] => [
  node,
  ...node.children.flatMap((child) => (typeof child === 'string' ? [] : all(child))),
];

it('counts every finish once by distance, and those off the green by what they lie on', () => {
  const codes = [254, ...['green', 'green', 'fringe', 'bunker'].map((c) => coverCode(c as 'green'))];
  const option = {
    finishCodes: Uint8Array.from(codes),
    finishesM: Float64Array.from([0, 0, 0.5, 0, 0, 2.5, 4, 0, 0, 9]),
  };
  const { distances, offGreen } = leaveShares(option, { eastM: 0, northM: 0 }, yards);
  expect(distances.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  expect(Object.fromEntries(distances.map(({ words, share }) => [words, share]))).toEqual({
    holed: 0.2,
    'within 3 ft': 0.2,
    '3 to 6 ft': 0,
    '6 to 10 ft': 0.2,
    '10 to 20 ft': 0.2,
    'over 20 ft': 0.2,
  });
  expect(offGreen).toEqual([
    { words: 'on the fringe', share: 0.2, trouble: false },
    { words: 'in sand', share: 0.2, trouble: true },
  ]);
  const drawing = drawLeaves(300, screenStyle('t'), { distances, offGreen }, 'Leaves');
  const bars = all(drawing).filter(({ tag }) => tag === 'rect');
  expect(bars.map(({ attributes }) => Number(attributes['width']) > 0)).toEqual(
    [...distances, ...offGreen].map(({ share }) => share > 0),
  );
});

it('mirrors the drawing of the stance and turns its words for a left-hander', () => {
  for (const technique of techniques) {
    const [right, left] = (['right', 'left'] as const).map((hand) =>
      drawStance(technique, hand, screenStyle('t')),
    );
    if (right === undefined || left === undefined) throw new Error('both are drawn');
    const width = Number(right.attributes['width']);
    const middles = (node: SvgNode): (readonly [number, number])[] =>
      all(node)
        .filter(({ tag }) => tag === 'ellipse' || tag === 'circle')
        .map(({ attributes }) => [Number(attributes['cx']), Number(attributes['cy'])] as const);
    for (const [i, [x, y]] of middles(right).entries()) {
      const [mirrored, same] = middles(left)[i] ?? [NaN, NaN];
      expect(mirrored).toBeCloseTo(width - x, 1);
      expect(same).toBe(y);
    }
    expect(left.attributes['aria-label']).toContain('front (right) foot');
    expect(right.attributes['aria-label']).toContain('front (left) foot');
  }
  expect(setUpPointers('splash', 'left')[0]).toContain('turned left');
  expect(setUpPointers('chip', 'left').join(' ')).toContain('front (right) foot');
});
