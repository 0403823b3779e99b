import { generator } from '../random/generator.ts';
import { normalQuantile } from '../numeric/normal.ts';

/** Random numbers of one shot, flat: standard normals for speed, line and loft, then a uniform for the contact. */
export const DRAWS_PER_SHOT = 4;

/** Powers of 1/g, where g solves g^5 = g + 1: the additive recurrence of M. Roberts (2018; from memory) in four dimensions. */
const STEPS = [0.8566748838545029, 0.733891856627126, 0.6287067210378087, 0.5385972572236101] as const;

/**
 * An evenly spread sample: a low-discrepancy sequence turned by a seeded shift. Every prefix is itself evenly spread, so a
 * coarse look may use the first few rows of the same table, and two options fed the same rows share their luck.
 */
export function standardShots(count: number, seed: number): Float64Array {
  const random = generator(seed);
  const shift = STEPS.map(() => random.uniform());
  const shots = new Float64Array(count * DRAWS_PER_SHOT);
  for (let i = 0; i < count; i += 1) {
    for (let d = 0; d < DRAWS_PER_SHOT; d += 1) {
      const x = (shift[d] ?? 0) + (i + 1) * (STEPS[d] ?? 0);
      const u = Math.min(1 - 1e-9, Math.max(1e-9, x - Math.floor(x)));
      shots[i * DRAWS_PER_SHOT + d] = d === 3 ? u : normalQuantile(u);
    }
  }
  return shots;
}
