import type { Observation } from './evidence.ts';
import type { Folds } from './folds.ts';
import type { PlateShape } from './plateShape.ts';
import {
  about,
  FOLD_SLOPE,
  foldValue,
  kernelBetween,
  leewayOf,
  planePart,
  solveUpper3,
  solveUpperTransposed3,
} from './plateSystem.ts';
import {
  apply,
  applyTransposed,
  type Reflections,
  solveLower,
  solveLowerTransposed,
} from './symmetricMatrix.ts';

/** The system of a fitted plate after it was solved. */
export interface SolvedPlate {
  readonly observations: readonly Observation[];
  /** Their terms about the middle. */
  readonly terms: readonly (readonly number[])[];
  readonly folds: Folds;
  readonly foldValues: Float64Array;
  readonly middleEastM: number;
  readonly middleNorthM: number;
  /** What a kernel counts by the stiffness. */
  readonly scale: number;
  readonly reflections: Reflections;
  /** The whole system, reflected, and the Cholesky factor of its trailing block. */
  readonly full: Float64Array;
  readonly factor: Float64Array;
}

/** A sum of heights as the fit sees it. */
export interface Target {
  readonly terms: readonly number[];
  /** Weights on the plane, reflected; the covariance with the evidence, reflected; and that after elimination. */
  readonly planeWeights: Float64Array;
  readonly toPlane: Float64Array;
  readonly explained: Float64Array;
  readonly folds: Float64Array;
}

/** What is left open by the evidence. */
export interface PlateDoubt {
  /** Describes an observation that was not made, so that covariances can be had from it. `terms` as in Observation. */
  target(terms: readonly number[]): Target;
  /** Covariance of two targets given all evidence. */
  covariance(a: Target, b: Target): number;
  /** What makes up a target's doubt: the errors of the readings by their own accuracy, and the ground between them. */
  parts(target: Target): { readonly readings: number; readonly between: number };
  /** The field sum of w_j x (covariance of target j with the height at a place), as a plate. */
  covarianceField(targets: readonly Target[], weights: Float64Array): PlateShape;
}

/** The doubt of a solved plate (`fitPlate` has the method). */
export function plateDoubt(solved: SolvedPlate): PlateDoubt {
  const { observations, terms, folds, foldValues, middleEastM, middleNorthM } = solved;
  const { scale, reflections, full, factor } = solved;
  const n = observations.length;
  const m = n - 3;

  const target = (given: readonly number[]): Target => {
    const t = about(given, middleEastM, middleNorthM);
    const foldAt = foldValue(given, folds);
    const k = new Float64Array(n);
    terms.forEach((other, i) => {
      let sum = scale * kernelBetween(t, other);
      for (let f = 0; f < folds.count; f += 1) {
        sum += FOLD_SLOPE * FOLD_SLOPE * (foldAt[f] as number) * (foldValues[i * folds.count + f] as number);
      }
      k[i] = sum;
    });
    applyTransposed(reflections, k);
    const u = planePart(t);
    solveUpperTransposed3(reflections.triangle, u);
    const explained = k.slice(3);
    for (let j = 0; j < m; j += 1) {
      explained[j] =
        (explained[j] as number) -
        (full[j + 3] as number) * (u[0] as number) -
        (full[n + j + 3] as number) * (u[1] as number) -
        (full[2 * n + j + 3] as number) * (u[2] as number);
    }
    solveLower(factor, m, explained);
    return { terms: t, planeWeights: u, toPlane: k.slice(0, 3), explained, folds: foldAt };
  };

  const covariance = (a: Target, b: Target): number => {
    let sum = scale * kernelBetween(a.terms, b.terms);
    for (let f = 0; f < folds.count; f += 1) {
      sum += FOLD_SLOPE * FOLD_SLOPE * (a.folds[f] as number) * (b.folds[f] as number);
    }
    for (let i = 0; i < 3; i += 1) {
      const ua = a.planeWeights[i] as number;
      const ub = b.planeWeights[i] as number;
      sum -= ua * (b.toPlane[i] as number) + ub * (a.toPlane[i] as number);
      for (let j = 0; j < 3; j += 1) sum += ua * (full[i * n + j] as number) * (b.planeWeights[j] as number);
    }
    for (let j = 0; j < m; j += 1) sum -= (a.explained[j] as number) * (b.explained[j] as number);
    return sum;
  };

  const parts = (t: Target): { readonly readings: number; readonly between: number } => {
    const g = t.explained.slice();
    solveLowerTransposed(factor, m, g);
    const weights = new Float64Array(n);
    weights.set(t.planeWeights);
    weights.set(g, 3);
    apply(reflections, weights);
    let readings = 0;
    let allowed = 0;
    observations.forEach((o, i) => {
      const square = (weights[i] as number) * (weights[i] as number);
      readings += o.variance * square;
      allowed += leewayOf(o) * square;
    });
    return { readings, between: Math.max(0, covariance(t, t) - allowed) };
  };

  const covarianceField = (targets: readonly Target[], weights: Float64Array): PlateShape => {
    const u = new Float64Array(3);
    const k1 = new Float64Array(3);
    const g = new Float64Array(m);
    const jumps = new Float64Array(folds.count);
    const places: number[] = [];
    targets.forEach((t, j) => {
      const w = weights[j] as number;
      for (let i = 0; i < 3; i += 1) {
        u[i] = (u[i] as number) + w * (t.planeWeights[i] as number);
        k1[i] = (k1[i] as number) + w * (t.toPlane[i] as number);
      }
      for (let i = 0; i < m; i += 1) g[i] = (g[i] as number) + w * (t.explained[i] as number);
      for (let f = 0; f < folds.count; f += 1) jumps[f] = (jumps[f] as number) + w * (t.folds[f] as number);
      for (let k = 0; k < t.terms.length; k += 3) {
        places.push(t.terms[k] ?? 0, t.terms[k + 1] ?? 0, scale * w * (t.terms[k + 2] ?? 0));
      }
    });
    // Weights of the evidence in the best prediction of the whole sum, and the plane's multipliers.
    solveLowerTransposed(factor, m, g);
    const onPlane = new Float64Array(3);
    for (let i = 0; i < 3; i += 1) {
      let sum = k1[i] as number;
      for (let j = 0; j < 3; j += 1) sum -= (full[i * n + j] as number) * (u[j] as number);
      for (let j = 0; j < m; j += 1) sum -= (full[i * n + 3 + j] as number) * (g[j] as number);
      onPlane[i] = -sum;
    }
    solveUpper3(reflections.triangle, onPlane);
    const lambda = new Float64Array(n);
    lambda.set(u);
    lambda.set(g, 3);
    apply(reflections, lambda);
    return plateOf(
      solved,
      lambda.map((value) => -value),
      onPlane,
      places,
      jumps,
    );
  };

  return { target, covariance, parts, covarianceField };
}

/** The plate of given coefficients on the evidence, plane, further centres and fold weights. */
export function plateOf(
  { observations, terms, folds, foldValues, scale, middleEastM, middleNorthM }: SolvedPlate,
  onEvidence: Float64Array,
  onPlane: Float64Array,
  furtherCentres: readonly number[],
  furtherFolds: Float64Array,
): PlateShape {
  const n = observations.length;
  const centres: number[] = [];
  terms.forEach((t, i) => {
    for (let k = 0; k < t.length; k += 3) {
      centres.push(t[k] ?? 0, t[k + 1] ?? 0, scale * (onEvidence[i] as number) * (t[k + 2] ?? 0));
    }
  });
  const foldJumps = new Float64Array(folds.count);
  for (let f = 0; f < folds.count; f += 1) {
    let sum = furtherFolds[f] as number;
    for (let i = 0; i < n; i += 1) {
      sum += (onEvidence[i] as number) * (foldValues[i * folds.count + f] as number);
    }
    foldJumps[f] = FOLD_SLOPE * FOLD_SLOPE * sum;
  }
  return {
    middleEastM,
    middleNorthM,
    centres: Float64Array.from([...centres, ...furtherCentres]),
    plane: onPlane,
    folds,
    foldJumps,
  };
}
