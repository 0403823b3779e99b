import { exp, log } from '../numeric/elementary.ts';
import type { Observation } from './evidence.ts';
import type { Folds } from './folds.ts';
import { assemble, trailing } from './plateSystem.ts';
import { applyTransposed, factorCholesky, solveLower } from './symmetricMatrix.ts';
import { kernelLog } from './thinPlateKernel.ts';

/**
 * Stiffness of the ground. The fit minimises bending energy / s2 + misfit, so s2 (1/m^0: slope squared) says how much the
 * ground bends. It is found from the evidence by restricted maximum likelihood, leaning weakly on what managed turf does.
 */
const USUAL_BENDING = 1e-3;
const BENDING_DECADES = 1.5;
const SEARCH_DECADES = 7;
/** Readings the stiffness is judged from; more would cost time and change little. */
const MOST_FOR_STIFFNESS = 120;

/** Restricted maximum likelihood of the bending variance with a weak log-normal prior, by golden section. */
export function likelyBending(
  observations: readonly Observation[],
  terms: readonly (readonly number[])[],
  folds: Folds,
  middleEastM: number,
  middleNorthM: number,
): number {
  // Spread evenly, and as many as may be whatever the number: one reading more must not halve what is judged from.
  const share = Math.min(1, MOST_FOR_STIFFNESS / observations.length);
  const taken = (i: number): boolean => Math.floor((i + 1) * share) > Math.floor(i * share);
  const some = observations.filter((_, i) => taken(i));
  const someTerms = terms.filter((_, i) => taken(i));
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
