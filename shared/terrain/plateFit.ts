import { exp, log } from '../numeric/elementary.ts';
import type { Observation } from './evidence.ts';
import type { Folds } from './folds.ts';
import {
  apply,
  applyBothSides,
  applyTransposed,
  factorCholesky,
  reflectColumns,
  type Reflections,
  solveLower,
  solveLowerTransposed,
} from './symmetricMatrix.ts';
import { kernelLog, thinPlateKernel } from './thinPlateKernel.ts';

/**
 * One standard deviation of the slope jump across a break line before anything was measured: a bank of 20 % may start or
 * end there.
 */
const FOLD_SLOPE = 0.2;
/**
 * Stiffness of the ground. The fit minimises bending energy / s2 + misfit, so s2 (1/m^0: slope squared) says how much the
 * ground bends. It is found from the evidence by restricted maximum likelihood, leaning weakly on what managed turf does.
 */
const USUAL_BENDING = 1e-3;
const BENDING_DECADES = 1.5;
const SEARCH_DECADES = 7;
/** Readings the stiffness is judged from; more would cost time and change little. */
const MOST_FOR_STIFFNESS = 120;

/** The surface of least bending through observations, in closed form, with what its doubt is computed from. */
export interface PlateFit {
  readonly bendingVariance: number;
  /** Kernel centres as flat [east, north, coefficient] triples about `middle`; the plane; and the folds. */
  readonly middleEastM: number;
  readonly middleNorthM: number;
  readonly centres: Float64Array;
  readonly plane: Float64Array;
  readonly folds: Folds;
  readonly foldJumps: Float64Array;
  /** Fitted minus observed, for each observation. */
  readonly residuals: Float64Array;
  /** What all the other observations say minus the observed, in its standard deviations. */
  readonly leaveOneOut: Float64Array;
  /** Leave-one-out prediction minus observed, in the observation's own unit. */
  readonly leaveOneOutError: Float64Array;
  /** Describes an observation that was not made, so that covariances can be had from it. `terms` as in Observation. */
  target(terms: readonly number[]): Target;
  /** Covariance of two targets given all evidence. */
  covariance(a: Target, b: Target): number;
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
  const leaveOneOutError = new Float64Array(n);
  const unit = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const c = coefficients[i] as number;
    residuals[i] = -(observations[i] as Observation).variance * c;
    // The diagonal of the inverse of the whole system: Q2 (trailing block)^-1 Q2'.
    unit.fill(0);
    unit[i] = 1;
    applyTransposed(reflections, unit);
    const z = unit.slice(3);
    solveLower(factor, m, z);
    let inverse = 0;
    for (let k = 0; k < m; k += 1) inverse += (z[k] as number) * (z[k] as number);
    leaveOneOut[i] = inverse > 0 ? -c / Math.sqrt(inverse) : 0;
    leaveOneOutError[i] = inverse > 0 ? -c / inverse : 0;
  }

  const foldJumps = new Float64Array(folds.count);
  for (let k = 0; k < folds.count; k += 1) {
    let sum = 0;
    for (let i = 0; i < n; i += 1) {
      sum += (coefficients[i] as number) * (foldValues[i * folds.count + k] as number);
    }
    foldJumps[k] = FOLD_SLOPE * FOLD_SLOPE * sum;
  }
  const centres: number[] = [];
  terms.forEach((t, i) => {
    for (let k = 0; k < t.length; k += 3) {
      centres.push(t[k] ?? 0, t[k + 1] ?? 0, scale * (coefficients[i] as number) * (t[k + 2] ?? 0));
    }
  });

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

  return {
    bendingVariance: stiffness,
    middleEastM,
    middleNorthM,
    centres: Float64Array.from(centres),
    plane,
    folds,
    foldJumps,
    residuals,
    leaveOneOut,
    leaveOneOutError,
    target,
    covariance,
  };
}

/** Height of a fitted plate at a point, in closed form (no grid). */
export function plateHeight(fit: PlateFit, eastM: number, northM: number): number {
  const x = eastM - fit.middleEastM;
  const y = northM - fit.middleNorthM;
  const { centres, plane } = fit;
  let sum = (plane[0] as number) + (plane[1] as number) * x + (plane[2] as number) * y;
  for (let i = 0; i < centres.length; i += 3) {
    const dx = x - (centres[i] as number);
    const dy = y - (centres[i + 1] as number);
    sum += (centres[i + 2] as number) * thinPlateKernel(dx * dx + dy * dy);
  }
  if (fit.folds.count > 0) {
    const folds = new Float64Array(fit.folds.count);
    fit.folds.sample(eastM, northM, folds);
    for (let k = 0; k < folds.length; k += 1) sum += (fit.foldJumps[k] as number) * (folds[k] as number);
  }
  return sum;
}

interface System {
  /** Kernel and (folds + noise), each reflected on both sides, n x n. */
  readonly kernel: Float64Array;
  readonly rest: Float64Array;
  readonly reflections: Reflections;
  /** n x folds. */
  readonly foldValues: Float64Array;
}

function assemble(
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
      let sum = i === j ? (observations[i] as Observation).variance : 0;
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

/** Restricted maximum likelihood of the bending variance with a weak log-normal prior, by golden section. */
function likelyBending(
  observations: readonly Observation[],
  terms: readonly (readonly number[])[],
  folds: Folds,
  middleEastM: number,
  middleNorthM: number,
): number {
  const every = Math.ceil(observations.length / MOST_FOR_STIFFNESS);
  const some = observations.filter((_, i) => i % every === 0);
  const someTerms = terms.filter((_, i) => i % every === 0);
  const n = some.length;
  const m = n - 3;
  if (m < 1) return USUAL_BENDING;
  const { kernel, rest, reflections } = assemble(some, someTerms, folds, middleEastM, middleNorthM);
  const values = Float64Array.from(some, (o) => o.value);
  applyTransposed(reflections, values);
  const kernelBlock = trailing(kernel, n);
  const restBlock = trailing(rest, n);
  const block = new Float64Array(m * m);
  const z = new Float64Array(m);
  const usual = log(USUAL_BENDING);
  const spread = BENDING_DECADES * Math.LN10;

  const cost = (logVariance: number): number => {
    const scale = exp(logVariance) / (8 * Math.PI);
    for (let i = 0; i < m; i += 1) {
      for (let j = 0; j <= i; j += 1) {
        block[i * m + j] = scale * (kernelBlock[i * m + j] as number) + (restBlock[i * m + j] as number);
      }
    }
    const logDeterminant = factorCholesky(block, m, kernelLog);
    if (Number.isNaN(logDeterminant)) return Infinity;
    z.set(values.subarray(3));
    solveLower(block, m, z);
    let misfit = 0;
    for (let i = 0; i < m; i += 1) misfit += (z[i] as number) * (z[i] as number);
    const away = (logVariance - usual) / spread;
    return logDeterminant + misfit + away * away;
  };

  // A coarse scan first, since the likelihood may have two humps; then golden section around the best.
  const step = 1.5 * Math.LN10;
  let best = usual;
  let lowest = cost(best);
  for (let d = -SEARCH_DECADES; d <= SEARCH_DECADES; d += 1.5) {
    const at = usual + d * Math.LN10;
    const value = cost(at);
    if (value < lowest) {
      lowest = value;
      best = at;
    }
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = best - step;
  let high = best + step;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let costA = cost(a);
  let costB = cost(b);
  while (high - low > 0.1) {
    if (costA < costB) {
      high = b;
      b = a;
      costB = costA;
      a = high - golden * (high - low);
      costA = cost(a);
    } else {
      low = a;
      a = b;
      costA = costB;
      b = low + golden * (high - low);
      costB = cost(b);
    }
  }
  return exp((low + high) / 2);
}

function kernelBetween(a: readonly number[], b: readonly number[]): number {
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

function planePart(terms: readonly number[]): Float64Array {
  const part = new Float64Array(3);
  for (let i = 0; i < terms.length; i += 3) {
    const weight = terms[i + 2] as number;
    part[0] = (part[0] as number) + weight;
    part[1] = (part[1] as number) + weight * (terms[i] as number);
    part[2] = (part[2] as number) + weight * (terms[i + 1] as number);
  }
  return part;
}

function foldValue(terms: readonly number[], folds: Folds): Float64Array {
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

const about = (terms: readonly number[], eastM: number, northM: number): number[] =>
  terms.map((value, i) => (i % 3 === 0 ? value - eastM : i % 3 === 1 ? value - northM : value));

function trailing(a: Float64Array, n: number): Float64Array {
  const m = n - 3;
  const block = new Float64Array(m * m);
  for (let i = 0; i < m; i += 1) block.set(a.subarray((i + 3) * n + 3, (i + 4) * n), i * m);
  return block;
}

function solveUpper3(r: Float64Array, x: Float64Array): void {
  for (let i = 2; i >= 0; i -= 1) {
    let sum = x[i] as number;
    for (let j = i + 1; j < 3; j += 1) sum -= (r[i * 3 + j] as number) * (x[j] as number);
    x[i] = sum / (r[i * 3 + i] as number);
  }
}

function solveUpperTransposed3(r: Float64Array, x: Float64Array): void {
  for (let i = 0; i < 3; i += 1) {
    let sum = x[i] as number;
    for (let j = 0; j < i; j += 1) sum -= (r[j * 3 + i] as number) * (x[j] as number);
    x[i] = sum / (r[i * 3 + i] as number);
  }
}
