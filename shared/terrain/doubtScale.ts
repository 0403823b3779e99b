import type { PlanePoint } from '../geometry/points.ts';
import type { Observation } from './evidence.ts';
import { MOST_DEVIATIONS } from './greenLeeway.ts';
import type { PlateFit } from './plateFit.ts';

/** Distance over which ground is taken to be of one character, metres. */
const NEIGHBOURHOOD_M = 7;
/** Readings of belief that the ground here is as rough as all of its kind, and that its kind is as rough as the whole. */
const AS_ITS_KIND = 0.25;
const AS_THE_WHOLE = 1;
/**
 * A place between readings is nearer to them than a reading that is left out is to the others, and turf is smoother than the
 * random plate of the fit: what leave-one-out errors say of roughness counts by this much. Found as the most likely values on
 * invented greens (tests/unit/terrain/calibration.ts) and checked on others, and on real ground.
 */
const BETWEEN_ON_GREENS = 0.56;
const BETWEEN_ELSEWHERE = 0.9;

/**
 * How rough the ground about a place is, as a factor on the doubt that the whole of it would give: a green bends far less
 * than the banks round it, while the fit knows one stiffness only. It is the root mean square of the leave-one-out errors of
 * heights, in their own standard deviations, near by and on ground of the same kind, green or not: where the readings are
 * foretold by their neighbours better than they need be, the ground between them is too. Slopes read and points along a
 * contour are no measure of it, for each has its twin beside it.
 */
export function doubtScale(
  observations: readonly Observation[],
  plate: PlateFit,
  isMeasure: (reading: number) => boolean,
  onGreen: (at: PlanePoint) => boolean,
): (eastM: number, northM: number) => number {
  const kinds = [new Kind(BETWEEN_ON_GREENS), new Kind(BETWEEN_ELSEWHERE)] as const;
  const kindAt = (eastM: number, northM: number): Kind => kinds[onGreen({ eastM, northM }) ? 0 : 1];
  observations.forEach(({ terms, reading }, i) => {
    if (reading < 0 || !isMeasure(reading)) return;
    const [east = 0, north = 0] = terms;
    const z = Math.min(Math.abs(plate.leaveOneOut[i] as number), MOST_DEVIATIONS);
    kindAt(east, north).add(east, north, z * z);
  });
  return (eastM, northM) => kindAt(eastM, northM).scaleAt(eastM, northM);
}

/** Ground of one kind: what was measured on it and how far off. */
class Kind {
  readonly #between: number;
  /** Flat [east, north, squared deviation] triples. */
  readonly #measured: number[] = [];
  #sum = AS_THE_WHOLE;

  constructor(between: number) {
    this.#between = between;
  }

  add(eastM: number, northM: number, squared: number): void {
    this.#measured.push(eastM, northM, squared);
    this.#sum += squared;
  }

  scaleAt(eastM: number, northM: number): number {
    const measured = this.#measured;
    let sum = (AS_ITS_KIND * this.#sum) / (AS_THE_WHOLE + measured.length / 3);
    let weights = AS_ITS_KIND;
    for (let i = 0; i < measured.length; i += 3) {
      const dx = ((measured[i] as number) - eastM) / NEIGHBOURHOOD_M;
      const dy = ((measured[i + 1] as number) - northM) / NEIGHBOURHOOD_M;
      const spread = 1 + dx * dx + dy * dy;
      const weight = 1 / (spread * spread * spread);
      sum += weight * (measured[i + 2] as number);
      weights += weight;
    }
    return this.#between * Math.sqrt(sum / weights);
  }
}
