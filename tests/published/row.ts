/** Where an expected value comes from: seen in the source, recalled, worked out independently, or trade lore. */
export type Mark = 'found' | 'from memory' | 'computed' | 'common practice';

/** One comparison of ours with the outside world. */
export interface CheckRow {
  readonly quantity: string;
  readonly source: string;
  readonly mark: Mark;
  /** A value, or a band [low, high]. */
  readonly expected: number | readonly [low: number, high: number];
  readonly ours: number;
  /** Absolute, in the same unit; for a band, how far outside it may lie. */
  readonly tolerance: number;
  readonly unit: string;
  /** True where our constants were fitted on this very row: it shows the fit, it proves nothing. */
  readonly fittedHere?: boolean;
  /** Set where we know that we miss: the reason. Such a row must really miss. */
  readonly misfit?: string;
  readonly note?: string;
}

export type Verdict = 'agrees' | 'misses';

/** A group of rows: the default export of every *.checks.ts file, measured when called. */
export interface CheckGroup {
  readonly title: string;
  readonly measure: () => readonly CheckRow[];
}

export function verdict(row: CheckRow): Verdict {
  const [low, high] = typeof row.expected === 'number' ? [row.expected, row.expected] : row.expected;
  return row.ours >= low - row.tolerance && row.ours <= high + row.tolerance ? 'agrees' : 'misses';
}
