import type { PlanePoint } from '../geometry/points.ts';
import type { Observation } from './evidence.ts';
import { MOST_DEVIATIONS } from './greenLeeway.ts';
import type { PlateFit } from './plateFit.ts';
import { leewayOf } from './plateSystem.ts';
import { kernelLog } from './thinPlateKernel.ts';

/** Ground is of one character over this distance at least, metres, and as far as so many readings of its kind reach. */
const NEIGHBOURHOOD_M = 5;
const NEIGHBOURS = 4;
/** Readings of belief that the ground here is as rough as all of its kind, and that its kind is as rough as the whole. */
const AS_ITS_KIND = 0.02;
const AS_THE_WHOLE = 1;
/**
 * What the plate leaves open of a reading that is left out beside what it leaves open of a place among readings as far
 * apart, and how far either way another reading still tells of the place: natural logarithms of variances.
 */
const LEFT_OUT_LOG = 2;
const ALIKE_LOG = 1.5;
/**
 * What turf does between readings, over what leave-one-out errors say of it: the random plate of the fit is rougher in the
 * small. This and the numbers above were found as the most likely on invented greens (tests/unit/terrain/calibration.ts) and
 * checked on others and on real ground (tests/published/doubt.checks.ts).
 */
const BETWEEN_ON_GREENS = 0.65;
const BETWEEN_ELSEWHERE = 0.95;

/** Between readings something is always open: of a reading's own doubt so much, and so much in square metres. */
const LEAST_OPEN = 0.02;
const LEAST_M2 = 1e-12;

/**
 * How rough the ground about a place is, as a factor on the doubt that the whole of it would give: a green bends far less
 * than the banks round it, a bank is smooth for a reading a stride away and not for one across it, while the fit knows one
 * stiffness only. It is the root mean square of the leave-one-out errors of heights, in their own standard deviations, of
 * readings near by, on ground of the same kind, green or not, and about as far from their neighbours as the place is from
 * its own: where such readings are foretold better than they need be, the ground is too. Slopes read and points along a
 * contour are no measure of it, for each has its twin beside it.
 *
 * @param betweenM2 what the plate leaves open of the height at the place, readings' errors apart: square metres
 */
export type DoubtScale = (eastM: number, northM: number, betweenM2: number) => number;

export function doubtScale(
  observations: readonly Observation[],
  plate: PlateFit,
  isMeasure: (reading: number) => boolean,
  onGreen: (at: PlanePoint) => boolean,
): DoubtScale {
  const kinds = [new Kind(BETWEEN_ON_GREENS), new Kind(BETWEEN_ELSEWHERE)] as const;
  const kindAt = (eastM: number, northM: number): Kind => kinds[onGreen({ eastM, northM }) ? 0 : 1];
  observations.forEach((observation, i) => {
    if (observation.reading < 0 || !isMeasure(observation.reading)) return;
    const [east = 0, north = 0] = observation.terms;
    const z = Math.min(Math.abs(plate.leaveOneOut[i] as number), MOST_DEVIATIONS);
    const whole = squared(plate.leaveOneOutSd[i] as number);
    const open = Math.max(whole - leewayOf(observation), LEAST_OPEN * whole, LEAST_M2);
    kindAt(east, north).measured.push(east, north, z * z, kernelLog(open));
  });
  return (eastM, northM, betweenM2) => kindAt(eastM, northM).scaleAt(eastM, northM, betweenM2);
}

/** Ground of one kind: what was measured on it and how far off. */
class Kind {
  readonly #between: number;
  /** Flat [east, north, squared deviation, log of the variance that leaving it out opens]. */
  readonly measured: number[] = [];

  constructor(between: number) {
    this.#between = between;
  }

  scaleAt(eastM: number, northM: number, betweenM2: number): number {
    const { measured } = this;
    const reachM2 = this.#reachM2(eastM, northM);
    const wanted = kernelLog(Math.max(betweenM2, LEAST_M2)) + LEFT_OUT_LOG;
    let near = 0;
    let nearWeights = 0;
    let all = AS_THE_WHOLE;
    let allWeights = AS_THE_WHOLE;
    for (let i = 0; i < measured.length; i += 4) {
      const off = ((measured[i + 3] as number) - wanted) / ALIKE_LOG;
      const alike = 1 / squared(1 + off * off);
      const dx = (measured[i] as number) - eastM;
      const dy = (measured[i + 1] as number) - northM;
      const spread = 1 + (dx * dx + dy * dy) / reachM2;
      const weight = alike / (spread * spread * spread);
      const square = measured[i + 2] as number;
      near += weight * square;
      nearWeights += weight;
      all += alike * square;
      allWeights += alike;
    }
    return this.#between * Math.sqrt(((AS_ITS_KIND * all) / allWeights + near) / (AS_ITS_KIND + nearWeights));
  }

  /** Square of the distance over which the ground is taken to be of one character here. */
  #reachM2(eastM: number, northM: number): number {
    const { measured } = this;
    const nearest = new Float64Array(NEIGHBOURS).fill(Infinity);
    for (let i = 0; i < measured.length; i += 4) {
      let d2 = squared((measured[i] as number) - eastM) + squared((measured[i + 1] as number) - northM);
      for (let k = 0; k < NEIGHBOURS; k += 1) {
        const held = nearest[k] as number;
        if (d2 < held) {
          nearest[k] = d2;
          d2 = held;
        }
      }
    }
    const last = nearest[NEIGHBOURS - 1] as number;
    const least = squared(NEIGHBOURHOOD_M);
    return last === Infinity ? least : Math.max(least, last);
  }
}

const squared = (x: number): number => x * x;
