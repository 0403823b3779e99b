import { describe, expect, it } from 'vitest';
import { PER_PAIR, puttDraws } from '../../../shared/planner/puttDraws.ts';

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('the draws of putts', () => {
  it.each([2, 8, 16])('have no mean, the variance of a normal law, and no order: %i pairs', (pairs) => {
    const draws = [...puttDraws(pairs)];
    const paces = draws.filter((_, k) => k % PER_PAIR === 0);
    const lines = draws.filter((_, k) => k % PER_PAIR === 1);
    expect(meanOf(paces)).toBeCloseTo(0, 12);
    expect(meanOf(paces.map((z) => z * z))).toBeCloseTo(1, 12);
    expect(meanOf(lines.map((z) => z * z))).toBeCloseTo(1, 12);
    expect(lines.every((z) => z > 0)).toBe(true);
    expect(new Set(lines).size).toBe(pairs);
    if (pairs > 2) expect(Math.abs(meanOf(paces.map((z, k) => z * (lines[k] ?? 0))))).toBeLessThan(0.2);
  });
});
