import type { Observation } from './evidence.ts';
import type { PlateFit } from './plateFit.ts';

/** Distance over which ground is taken to be of one character, metres. */
const NEIGHBOURHOOD_M = 5;
/** So many readings' worth of belief that the ground here is as rough as the whole. */
const PRIOR_READINGS = 0.5;

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
      const weight = 1 / (spread * spread);
      sum += weight * (flat[i + 2] as number);
      weights += weight;
    }
    return Math.sqrt(sum / weights);
  };
}
