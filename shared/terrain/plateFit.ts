import type { Observation } from './evidence.ts';
import type { Folds } from './folds.ts';
import { likelyBending } from './likelyBending.ts';
import { type PlateDoubt, plateDoubt, plateOf, type SolvedPlate } from './plateDoubt.ts';
import type { PlateShape } from './plateShape.ts';
import { about, assemble, leewayOf, solveUpper3, trailing } from './plateSystem.ts';
import {
  apply,
  applyTransposed,
  factorCholesky,
  solveLower,
  solveLowerTransposed,
} from './symmetricMatrix.ts';
import { kernelLog } from './thinPlateKernel.ts';

/** The surface of least bending through observations, in closed form, with what its doubt is computed from. */
export interface PlateFit extends PlateShape, PlateDoubt {
  readonly bendingVariance: number;
  /** Fitted minus observed, for each observation. */
  readonly residuals: Float64Array;
  /** What all the other observations say minus the observed, in its standard deviations. */
  readonly leaveOneOut: Float64Array;
  /** That standard deviation: of what all the others say minus the observed, in the observation's own unit. */
  readonly leaveOneOutSd: Float64Array;
}

/**
 * Fits the plate. The observations must determine a plane (see `fillers`).
 *
 * Method: universal kriging with the generalised covariance r^2 log r, which is the thin-plate smoothing spline (Wahba
 * 1990, Spline Models for Observational Data, and Cressie 1993; both from memory). The plane is eliminated by Householder
 * reflections, which leaves a positive definite system for Cholesky, so a plane comes back exactly whatever the noise.
 *
 * @param bendingVariance fixes the stiffness instead of finding it
 * @throws Error where the observations do not determine a plane
 */
export function fitPlate(
  observations: readonly Observation[],
  folds: Folds,
  bendingVariance?: number,
): PlateFit {
  const n = observations.length;
  let middleEastM = 0;
  let middleNorthM = 0;
  for (const o of observations) {
    middleEastM += (o.terms[0] ?? 0) / n;
    middleNorthM += (o.terms[1] ?? 0) / n;
  }
  const terms = observations.map((o) => about(o.terms, middleEastM, middleNorthM));
  const stiffness = bendingVariance ?? likelyBending(observations, terms, folds, middleEastM, middleNorthM);
  const scale = stiffness / (8 * Math.PI);
  const system = assemble(observations, terms, folds, middleEastM, middleNorthM);
  const { kernel, rest, reflections, foldValues } = system;
  const m = n - 3;

  // Q' (K + folds + noise) Q and its trailing block, which knows nothing of planes.
  const full = new Float64Array(n * n);
  for (let i = 0; i < full.length; i += 1) {
    full[i] = scale * (kernel[i] as number) + (rest[i] as number);
  }
  const factor = trailing(full, n);
  if (Number.isNaN(factorCholesky(factor, m, kernelLog))) {
    throw new Error('The readings do not determine a surface.');
  }
  const values = Float64Array.from(observations, (o) => o.value);
  applyTransposed(reflections, values);
  const gamma = values.slice(3);
  solveLower(factor, m, gamma);
  solveLowerTransposed(factor, m, gamma);
  const coefficients = new Float64Array(n);
  coefficients.set(gamma, 3);
  const plane = new Float64Array(3);
  for (let i = 0; i < 3; i += 1) {
    let sum = values[i] as number;
    for (let j = 0; j < m; j += 1) sum -= (full[i * n + 3 + j] as number) * (gamma[j] as number);
    plane[i] = sum;
  }
  solveUpper3(reflections.triangle, plane);
  apply(reflections, coefficients);

  const residuals = new Float64Array(n);
  const leaveOneOut = new Float64Array(n);
  const leaveOneOutSd = new Float64Array(n);
  const unit = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const c = coefficients[i] as number;
    residuals[i] = -leewayOf(observations[i] as Observation) * c;
    // The diagonal of the inverse of the whole system: Q2 (trailing block)^-1 Q2'.
    unit.fill(0);
    unit[i] = 1;
    applyTransposed(reflections, unit);
    const z = unit.slice(3);
    solveLower(factor, m, z);
    let inverse = 0;
    for (let k = 0; k < m; k += 1) inverse += (z[k] as number) * (z[k] as number);
    leaveOneOut[i] = inverse > 0 ? -c / Math.sqrt(inverse) : 0;
    leaveOneOutSd[i] = inverse > 0 ? 1 / Math.sqrt(inverse) : 0;
  }

  const solved: SolvedPlate = {
    ...{ observations, terms, folds, foldValues, middleEastM, middleNorthM },
    ...{ scale, reflections, full, factor },
  };
  return {
    ...plateOf(solved, coefficients, plane, [], new Float64Array(folds.count)),
    bendingVariance: stiffness,
    residuals,
    leaveOneOut,
    leaveOneOutSd,
    ...plateDoubt(solved),
  };
}
