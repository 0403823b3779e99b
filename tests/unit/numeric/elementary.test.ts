import { describe, expect, it } from 'vitest';
import * as ours from '../../../shared/numeric/elementary.ts';

/** Largest error over a sweep, in units of the last place of the larger of the value and 1e-3. */
function worst(f: (x: number) => number, reference: (x: number) => number, from: number, to: number): number {
  let most = 0;
  for (let i = 0; i <= 20_000; i += 1) {
    const x = from + ((to - from) * i) / 20_000;
    const truth = reference(x);
    const scale = Math.max(Math.abs(truth), 1e-3) * Number.EPSILON;
    most = Math.max(most, Math.abs(f(x) - truth) / scale);
  }
  return most;
}

describe('elementary functions against the built-in ones', () => {
  it.each([
    ['sin', ours.sin, Math.sin, -30, 30],
    ['cos', ours.cos, Math.cos, -30, 30],
    ['atan', ours.atan, Math.atan, -50, 50],
    ['asin', ours.asin, Math.asin, -1, 1],
    ['exp', ours.exp, Math.exp, -30, 30],
    ['log', ours.log, Math.log, 1e-6, 50],
  ] as const)('%s stays within 4 units in the last place', (_name, f, reference, from, to) => {
    expect(worst(f, reference, from, to)).toBeLessThan(4);
  });

  it('has every quadrant of atan2', () => {
    for (const [y, x] of [
      [1, 2],
      [1, -2],
      [-1, 2],
      [-1, -2],
      [0, -1],
      [3, 0],
      [-3, 0],
      [0, 0],
    ] as const) {
      expect(ours.atan2(y, x)).toBeCloseTo(Math.atan2(y, x), 14);
    }
  });

  it('raises to powers as used in the lift law', () => {
    expect(
      worst(
        (x) => ours.pow(x, 0.4),
        (x) => x ** 0.4,
        0.01,
        3,
      ),
    ).toBeLessThan(8);
    expect(ours.pow(0, 0.4)).toBe(0);
  });
});
