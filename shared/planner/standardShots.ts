import { generator } from '../random/generator.ts';
import { normalQuantile } from '../numeric/normal.ts';

/** Random numbers of one shot, flat: standard normals for speed, line and loft, then a uniform for the contact. */
export const DRAWS_PER_SHOT = 4;

/** Primitive polynomials and first direction numbers of dimensions 2 to 4 (Joe & Kuo 2008; from memory). */
const DIMENSIONS = [
  { degree: 1, coefficients: 0, first: [1] },
  { degree: 2, coefficients: 1, first: [1, 3] },
  { degree: 3, coefficients: 1, first: [1, 3, 1] },
] as const;
const BITS = 32;

const powerOfTwo = (bit: number): number => (1 << bit) >>> 0;

function directions(dimension: number): Uint32Array {
  const v = new Uint32Array(BITS);
  const rule = DIMENSIONS[dimension - 1];
  if (rule === undefined) {
    for (let i = 0; i < BITS; i += 1) v[i] = powerOfTwo(BITS - 1 - i);
    return v;
  }
  const { degree, coefficients, first } = rule;
  for (let i = 0; i < BITS; i += 1) {
    if (i < degree) {
      v[i] = (first[i] ?? 1) * powerOfTwo(BITS - 1 - i);
      continue;
    }
    const back = v[i - degree] ?? 0;
    let bits = back ^ (back >>> degree);
    for (let k = 1; k < degree; k += 1) {
      if (((coefficients >>> (degree - 1 - k)) & 1) === 1) bits ^= v[i - k] ?? 0;
    }
    v[i] = bits;
  }
  return v;
}

/**
 * An evenly spread sample: a Sobol' sequence (Sobol' 1967; Gray-code order of Antonov & Saleev 1979) turned by
 * a seeded digital shift. Every prefix of a power of two is balanced, so a coarse look may use the first rows
 * of the same table, and two options fed the same rows share their luck.
 */
export function standardShots(count: number, seed: number): Float64Array {
  const random = generator(seed);
  const shots = new Float64Array(count * DRAWS_PER_SHOT);
  for (let d = 0; d < DRAWS_PER_SHOT; d += 1) {
    const v = directions(d);
    const shift = Math.floor(random.uniform() * 4294967296);
    let state = 0;
    for (let i = 0; i < count; i += 1) {
      // The middle of the finest cell: never 0 or 1.
      const u = (((state ^ shift) >>> 0) + 0.5) / 4294967296;
      shots[i * DRAWS_PER_SHOT + d] = d === DRAWS_PER_SHOT - 1 ? u : normalQuantile(u);
      let bit = 0;
      while (((i >>> bit) & 1) === 1) bit += 1;
      state ^= v[bit] ?? 0;
    }
  }
  return shots;
}
