import type { Observation } from './evidence.ts';
import type { Folds } from './folds.ts';
import { applyBothSides, reflectColumns, type Reflections } from './symmetricMatrix.ts';
import { thinPlateKernel } from './thinPlateKernel.ts';

/**
 * One standard deviation of the slope jump across a break line before anything was measured: a bank of 20 % may start or
 * end there.
 */
export const FOLD_SLOPE = 0.2;
/** The equations of a plate through observations, before it is said how stiff it is. */
export interface System {
  /** Kernel and (folds + noise), each reflected on both sides, n x n. */
  readonly kernel: Float64Array;
  readonly rest: Float64Array;
  readonly reflections: Reflections;
  /** n x folds. */
  readonly foldValues: Float64Array;
}

export const leewayOf = ({ leeway, variance }: Observation): number => leeway ?? variance;

export function assemble(
  observations: readonly Observation[],
  terms: readonly (readonly number[])[],
  folds: Folds,
  middleEastM: number,
  middleNorthM: number,
): System {
  const n = observations.length;
  const kernel = new Float64Array(n * n);
  const rest = new Float64Array(n * n);
  const foldValues = new Float64Array(n * folds.count);
  terms.forEach((t, i) => {
    const absolute = about(t, -middleEastM, -middleNorthM);
    foldValues.set(foldValue(absolute, folds), i * folds.count);
  });
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const value = kernelBetween(terms[i] ?? [], terms[j] ?? []);
      kernel[i * n + j] = value;
      kernel[j * n + i] = value;
      let sum = i === j ? leewayOf(observations[i] as Observation) : 0;
      for (let f = 0; f < folds.count; f += 1) {
        sum +=
          FOLD_SLOPE *
          FOLD_SLOPE *
          (foldValues[i * folds.count + f] as number) *
          (foldValues[j * folds.count + f] as number);
      }
      rest[i * n + j] = sum;
      rest[j * n + i] = sum;
    }
  }
  const parts = terms.map(planePart);
  const columns = [0, 1, 2].map((c) => Float64Array.from(parts, (p) => p[c] as number));
  const reflections = reflectColumns(columns, n);
  applyBothSides(reflections, kernel);
  applyBothSides(reflections, rest);
  return { kernel, rest, reflections, foldValues };
}

/** Covariance of two sums of heights under the bare kernel. */
export function kernelBetween(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 3) {
    for (let j = 0; j < b.length; j += 3) {
      const dx = (a[i] as number) - (b[j] as number);
      const dy = (a[i + 1] as number) - (b[j + 1] as number);
      sum += (a[i + 2] as number) * (b[j + 2] as number) * thinPlateKernel(dx * dx + dy * dy);
    }
  }
  return sum;
}

/** What a sum of heights takes from the plane 1, east, north. */
export function planePart(terms: readonly number[]): Float64Array {
  const part = new Float64Array(3);
  for (let i = 0; i < terms.length; i += 3) {
    const weight = terms[i + 2] as number;
    part[0] = (part[0] as number) + weight;
    part[1] = (part[1] as number) + weight * (terms[i] as number);
    part[2] = (part[2] as number) + weight * (terms[i + 1] as number);
  }
  return part;
}

/** What a sum of heights takes from each fold; `terms` in the plane itself, not about the middle. */
export function foldValue(terms: readonly number[], folds: Folds): Float64Array {
  const sum = new Float64Array(folds.count);
  if (folds.count === 0) return sum;
  const at = new Float64Array(folds.count);
  for (let i = 0; i < terms.length; i += 3) {
    folds.sample(terms[i] as number, terms[i + 1] as number, at);
    for (let k = 0; k < at.length; k += 1) {
      sum[k] = (sum[k] as number) + (terms[i + 2] as number) * (at[k] as number);
    }
  }
  return sum;
}

/** The same terms with their places counted from another origin. */
export const about = (terms: readonly number[], eastM: number, northM: number): number[] =>
  terms.map((value, i) => (i % 3 === 0 ? value - eastM : i % 3 === 1 ? value - northM : value));

/** The block of a square matrix that knows nothing of planes: all but its first three rows and columns. */
export function trailing(a: Float64Array, n: number): Float64Array {
  const m = n - 3;
  const block = new Float64Array(m * m);
  for (let i = 0; i < m; i += 1) block.set(a.subarray((i + 3) * n + 3, (i + 4) * n), i * m);
  return block;
}

export function solveUpper3(r: Float64Array, x: Float64Array): void {
  for (let i = 2; i >= 0; i -= 1) {
    let sum = x[i] as number;
    for (let j = i + 1; j < 3; j += 1) sum -= (r[i * 3 + j] as number) * (x[j] as number);
    x[i] = sum / (r[i * 3 + i] as number);
  }
}

export function solveUpperTransposed3(r: Float64Array, x: Float64Array): void {
  for (let i = 0; i < 3; i += 1) {
    let sum = x[i] as number;
    for (let j = 0; j < i; j += 1) sum -= (r[j * 3 + i] as number) * (x[j] as number);
    x[i] = sum / (r[i * 3 + i] as number);
  }
}
