import { exp, log } from './elementary.ts';

/**
 * Quantile of the standard normal distribution for p in (0, 1): P. J. Acklam's rational approximation (from memory),
 * relative error under 1.2e-9. Beyond (0, 1) it is infinite.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0)) return -Infinity;
  if (!(p < 1)) return Infinity;
  if (p < 0.02425) return tail(Math.sqrt(-2 * log(p)));
  if (p > 1 - 0.02425) return -tail(Math.sqrt(-2 * log(1 - p)));
  const q = p - 0.5;
  const r = q * q;
  return (
    ((((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
      2.506628277459239) *
      q) /
    (((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
      1)
  );
}

function tail(q: number): number {
  return (
    (((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) *
      q +
      4.374664141464968) *
      q +
      2.938163982698783) /
    ((((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q +
      1)
  );
}

/** Density of the standard normal distribution. */
export function normalDensity(x: number): number {
  return 0.3989422804014327 * exp(-0.5 * x * x);
}

/** Distribution function of the standard normal: Abramowitz & Stegun 26.2.17 (from memory), absolute error under 7.5e-8. */
export function normalCdf(x: number): number {
  if (x < 0) return 1 - normalCdf(-x);
  const t = 1 / (1 + 0.2316419 * x);
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return 1 - normalDensity(x) * series;
}
