import { log } from '../numeric/elementary.ts';

/** A source of randomness handed to whoever needs one. The same seed gives the same numbers on every machine. */
export interface Generator {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * sfc32 (Chris Doty-Humphrey's small fast counter generator, PractRand; from memory), seeded by running it past its
 * warm-up; normals by Marsaglia's polar method (Marsaglia & Bray 1964; from memory).
 */
export function generator(seed: number): Generator {
  let a = seed | 0;
  let b = Math.floor(seed / 4294967296) | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  let spare = NaN;

  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return t >>> 0;
  };
  for (let i = 0; i < 15; i += 1) next();

  const uniform = (): number => next() / 4294967296;
  const normal = (): number => {
    if (spare === spare) {
      const value = spare;
      spare = NaN;
      return value;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const f = Math.sqrt((-2 * log(s)) / s);
        spare = v * f;
        return u * f;
      }
    }
  };
  return { uniform, normal };
}
