/**
 * What the published Rules say about the size of material that helps read a green, as data. Whether a page may be used
 * in a round is never decided here: the Rules of Golf as published, and the Committee, decide.
 */
export interface SizeRule {
  readonly id: 'scale' | 'page';
  readonly quantity: string;
  readonly limit: string;
  readonly source: string;
  readonly mark: string;
}

/** 3/8 in to 5 yd is 0.375 in to 180 in, so 1 to 480. */
export const smallestScaleDenominator = 480;
export const largestPageIn = { width: 4.25, height: 7 } as const;

export const sizeRules: readonly SizeRule[] = [
  {
    id: 'scale',
    quantity: 'scale of an image of a putting green, at most',
    limit: '3/8 in to 5 yd (1\u00a0:\u00a0480)',
    source: 'Rules of Golf, clarification 4.3a/1 (since 1 January 2019)',
    mark: 'found: bunkered.co.uk, golfweek, sport24; usga.org green-reading FAQs',
  },
  {
    id: 'page',
    quantity: 'size of the book or paper, at most',
    limit: '4¼\u00a0×\u00a07\u00a0in',
    source: 'Rules of Golf, clarification 4.3a/1 (since 1 January 2019)',
    mark: 'found: bunkered.co.uk, golfweek, sport24; usga.org green-reading FAQs',
  },
];

/** Which of the two limits a page exceeds; an empty list says nothing about the rest of the Rules. */
export function exceededSizeRules(page: {
  readonly scaleDenominator: number;
  readonly widthIn: number;
  readonly heightIn: number;
}): readonly SizeRule['id'][] {
  // Drawing units are rounded to hundredths, so a true-size page may be off by that much and no more.
  const slack = 1e-3;
  const [short, long] = [Math.min(page.widthIn, page.heightIn), Math.max(page.widthIn, page.heightIn)];
  const exceeded: SizeRule['id'][] = [];
  if (page.scaleDenominator < smallestScaleDenominator * (1 - slack)) exceeded.push('scale');
  if (short > largestPageIn.width + slack || long > largestPageIn.height + slack) exceeded.push('page');
  return exceeded;
}
