import { describe, expect, it } from 'vitest';
import { checkGroups } from './groups.ts';
import { verdict } from './row.ts';

for (const group of await checkGroups()) {
  describe(group.title, () => {
    for (const row of group.measure()) {
      const misfit = row.misfit !== undefined;
      it(`${row.quantity}${misfit ? ' (known misfit)' : ''}`, () => {
        expect(Number.isFinite(row.ours)).toBe(true);
        expect(row.source).not.toBe('');
        // A known misfit that comes to agree must lose its excuse.
        expect({ ours: row.ours, verdict: verdict(row) }).toEqual({
          ours: row.ours,
          verdict: misfit ? 'misses' : 'agrees',
        });
      });
    }
  });
}
