import { normalQuantile } from '../numeric/normal.ts';

/** Numbers of one pair of putts. */
export const PER_PAIR = 2;
/** How far on a size of line is taken for the next pace, as a share of all: sizes then fall on paces without order. */
const STRIDE_SHARE = (Math.sqrt(5) - 1) / 2;

/**
 * How pairs of putts differ from what was meant, in deviations: the pace of both, slowest first, then how far their lines
 * lie to either side. Each column holds the medians of equal parts of the normal law, scaled to its variance, so that few
 * putts tell what many would: on the sample a map of 16 putts a node is half as far off as with draws by chance.
 */
export function puttDraws(pairs: number): Float64Array {
  const medians = (of: (share: number) => number): number[] => {
    const values = Array.from({ length: pairs }, (_, i) => of((i + 0.5) / pairs));
    const square = values.reduce((sum, z) => sum + z * z, 0) / pairs;
    return values.map((z) => (square === 0 ? 0 : z / Math.sqrt(square)));
  };
  const paces = medians(normalQuantile);
  const lines = medians((share) => normalQuantile((1 + share) / 2));
  const stride = strideOf(pairs);
  return Float64Array.from({ length: pairs * PER_PAIR }, (_, k) =>
    k % PER_PAIR === 0 ? (paces[k / PER_PAIR] ?? 0) : (lines[(((k - 1) / PER_PAIR) * stride) % pairs] ?? 0),
  );
}

/** The whole number nearest the share that has no factor in common with the count. */
function strideOf(count: number): number {
  const factor = (a: number, b: number): number => (b === 0 ? a : factor(b, a % b));
  const strides = Array.from({ length: count }, (_, i) => i + 1).filter((k) => factor(k, count) === 1);
  const off = (k: number): number => Math.abs(k - STRIDE_SHARE * count);
  return strides.reduce((best, k) => (off(k) < off(best) ? k : best), 1);
}
