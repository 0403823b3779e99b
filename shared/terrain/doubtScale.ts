import type { Observation } from './evidence.ts';
import type { PlateFit } from './plateFit.ts';

/** Distance over which ground is taken to be of one character, metres. */
const NEIGHBOURHOOD_M = 4;
/** A share of a reading of belief that the ground here is as rough as the whole: where few are near, it decides. */
const PRIOR_READINGS = 0.2;
/**
 * A place between readings is nearer to them than a reading that is left out is to the others, about half as far. Errors of
 * the plate's own random ground shrink in proportion, those of turf, which is smooth, with the square: so what a
 * leave-one-out error says of roughness counts by 2^-1 between the readings, here a little more for safety. Computed: the
 * check of the invented greens, tests/published/doubt.checks.ts.
 */
const BETWEEN_READINGS = 0.65;

/**
 * How rough the ground about a place is, as a factor on the doubt that the whole of it would give: a green bends far less
 * than the banks round it, while the fit knows one stiffness only. It is the local root mean square of the leave-one-out
 * errors in their own standard deviations: where the readings are foretold by their neighbours better than they need be,
 * the ground between them is too.
 */
export function doubtScale(
  observations: readonly Observation[],
  plate: PlateFit,
): (eastM: number, northM: number) => number {
  const known: number[] = [];
  observations.forEach(({ terms, reading }, i) => {
    if (reading < 0) return;
    const z = plate.leaveOneOut[i] as number;
    const [east = 0, north = 0] = terms;
    known.push(east, north, z * z);
  });
  const flat = Float64Array.from(known);
  return (eastM, northM) => {
    let sum = PRIOR_READINGS;
    let weights = PRIOR_READINGS;
    for (let i = 0; i < flat.length; i += 3) {
      const dx = ((flat[i] as number) - eastM) / NEIGHBOURHOOD_M;
      const dy = ((flat[i + 1] as number) - northM) / NEIGHBOURHOOD_M;
      const spread = 1 + dx * dx + dy * dy;
      const weight = 1 / (spread * spread * spread);
      sum += weight * (flat[i + 2] as number);
      weights += weight;
    }
    return BETWEEN_READINGS * Math.sqrt(sum / weights);
  };
}
