import type { PlanePoint } from '../geometry/points.ts';
import type { Observation } from './evidence.ts';
import type { PlateFit } from './plateFit.ts';

/** A reading further than this from what the others say is likelier a slip than a sign of rough ground: it counts as this. */
export const MOST_DEVIATIONS = 3;
/** A reading's worth of belief that greens bend as readily as the whole, and the least they are taken to. */
const AS_THE_WHOLE = 1;
const LEAST_SHARE = 0.04;

/**
 * Greens bend less than the banks round them, but a plate has one stiffness. A stiffer place is one where readings count for
 * less against the bending: on greens their errors are given leeway by how much better their neighbours foretell them than
 * the whole would have it. Without it the fit follows the errors of readings close together on quiet ground, and one reading
 * more can make its slopes worse.
 *
 * @param plate fit of the observations as they are
 * @returns the same observations where greens bend as readily as the rest
 */
export function withGreenLeeway(
  observations: readonly Observation[],
  plate: PlateFit,
  isMeasure: (reading: number) => boolean,
  onGreen: (at: PlanePoint) => boolean,
): readonly Observation[] {
  const on = observations.map(({ terms }) => onGreen(middleOf(terms)));
  let sum = AS_THE_WHOLE;
  let count = AS_THE_WHOLE;
  observations.forEach(({ reading }, i) => {
    if (on[i] !== true || !isMeasure(reading)) return;
    const z = Math.min(Math.abs(plate.leaveOneOut[i] as number), MOST_DEVIATIONS);
    sum += z * z;
    count += 1;
  });
  const share = Math.max(LEAST_SHARE, sum / count);
  if (share >= 1) return observations;
  return observations.map((o, i) => (on[i] === true ? { ...o, leeway: o.variance / share } : o));
}

/** Where an observation was made: the middle of what it compares. */
function middleOf(terms: readonly number[]): PlanePoint {
  const [east = 0, north = 0] = terms;
  return {
    eastM: (east + (terms[terms.length - 3] ?? east)) / 2,
    northM: (north + (terms[terms.length - 2] ?? north)) / 2,
  };
}
