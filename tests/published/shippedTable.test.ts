import { afterEach, expect, it, vi } from 'vitest';
import { agrees, compareWithShipped } from './fit/shippedTable.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

it('agrees where what was fitted rounds to what ships, to the decimals it ships with', () => {
  const factor = (fitted: number, decimals = 2) => agrees({ name: '', shipped: 1.36, fitted, decimals });
  expect([1.355, 1.36, 1.3649, 1.365].map((fitted) => factor(fitted))).toEqual([true, true, true, true]);
  expect([1.3549, 1.3651, 0.76, NaN].map((fitted) => factor(fitted))).toEqual([false, false, false, false]);
  expect(factor(1.3604, 3)).toBe(true);
  expect(factor(1.3606, 3)).toBe(false);
});

it('prints every constant and fails the script where one of them is another', () => {
  const lines: unknown[] = [];
  vi.spyOn(console, 'log').mockImplementation((line) => lines.push(line));
  const complaint = vi.spyOn(console, 'error').mockReturnValue(undefined);
  const before = process.exitCode;
  const same = { name: 'fairway, shortM', shipped: 5.4, fitted: 5.44, decimals: 1 };
  compareWithShipped([same]);
  expect(process.exitCode).toBe(before);
  compareWithShipped([same, { name: 'bunker, factor', shipped: 0.76, fitted: 0.79, decimals: 2 }]);
  const failed = process.exitCode;
  process.exitCode = before;
  expect(failed).toBe(1);
  expect(lines).toContain('fairway, shortM      5.4     5.44  yes');
  expect(lines).toContain('bunker, factor      0.76    0.790  NO');
  expect(complaint).toHaveBeenCalledExactlyOnceWith('1 of 2 do not round to what ships.');
});
