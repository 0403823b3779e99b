import type { PlanePoint } from '../geometry/points.ts';
import { variance } from './confidence.ts';
import type { Evidence, Observation, Reading } from './evidence.ts';
import type { Folds } from './folds.ts';
import { fitPlate, type PlateFit } from './plateFit.ts';
import { plateHeight } from './plateShape.ts';
import { leewayOf } from './plateSystem.ts';

/** How one reading agrees with the surface and with all the others. */
export interface ReadingFit {
  readonly id: string;
  readonly kind: Reading['kind'];
  readonly at: PlanePoint;
  /** Metres for a height, contour or node of a grid; a slope's misfit vector in percent has this length. */
  readonly residual: number;
  readonly unit: 'm' | 'pct';
  /** The stated accuracy in the same unit. */
  readonly accuracy: number;
  /**
   * `agrees`: the surface passes within the stated accuracy. `strays`: it passes outside it, as one good reading in three
   * will. `contradicts`: the other readings put the ground too many of their joint standard deviations from it, more of
   * them off a green than on it.
   */
  readonly verdict: 'agrees' | 'strays' | 'contradicts';
  /** How far the surface fitted to all the other readings is from this one, in the unit. */
  readonly othersDiffer: number;
}

/** More than this many of its standard deviations from what the others say, a reading contradicts them. */
const CONTRADICTION = 3;
/** Unmown and unshaped ground has humps and hollows between the readings that the plate knows nothing of. */
const CONTRADICTION_OFF_GREEN = 4.5;
/** So many readings are set aside in turn to see who is wrong; more than that and the evidence is wrong as a whole. */
const MOST_SET_ASIDE = 6;
const LEAST_KEPT = 6;

/**
 * How every reading agrees. One bad reading drags its neighbours' forecasts with it, so the worst is set aside and the rest
 * are judged without it, until none contradicts. The surface itself keeps them all: whose slip it was is for a person to say.
 */
export function readingFits(
  evidence: Evidence,
  observations: readonly Observation[],
  folds: Folds,
  plate: PlateFit,
  onGreen: (at: PlanePoint) => boolean,
  bendingVariance?: number,
): ReadingFit[] {
  const limits = evidence.readings.map(({ at }) => (onGreen(at) ? CONTRADICTION : CONTRADICTION_OFF_GREEN));
  const excess = (reading: number, { deviations }: Forecast): number =>
    deviations / (limits[reading] ?? CONTRADICTION);
  const groups = observationsByReading(observations, evidence.readings.length);
  const othersSay = new Map<number, Forecast>();
  let kept = observations.map((_, i) => i);
  let judge = plate;
  for (let round = 0; round < MOST_SET_ASIDE && kept.length > LEAST_KEPT; round += 1) {
    let worst = -1;
    let furthest = 1;
    for (const [reading, forecast] of leftOut(observations, kept, judge)) {
      if (excess(reading, forecast) <= furthest) continue;
      furthest = excess(reading, forecast);
      worst = reading;
    }
    const aside = groups[worst];
    if (aside === undefined) break;
    kept = kept.filter((i) => !aside.includes(i));
    // The first slip taken out may have made the ground look rough; after that the stiffness changes little.
    judge = fitPlate(
      kept.map((i) => observations[i] as Observation),
      folds,
      round === 0 ? bendingVariance : judge.bendingVariance,
    );
    othersSay.set(
      worst,
      forecastOf(
        aside.map((i) => observations[i] as Observation),
        judge,
      ),
    );
  }
  for (const [reading, forecast] of leftOut(observations, kept, judge)) othersSay.set(reading, forecast);

  return evidence.readings.map((reading, r): ReadingFit => {
    const own = groups[r] ?? [];
    const first = observations[own[0] ?? -1];
    const forecast = othersSay.get(r);
    const slope = reading.kind === 'slope' || reading.kind === 'plane';
    const per = slope ? 100 : 1;
    const accuracy = per * Math.sqrt(first?.variance ?? NaN);
    const misfits = own.map((i) => plate.residuals[i] as number);
    const residual = per * (slope ? lengthOf(misfits) : (misfits[0] ?? NaN));
    const contradicts = forecast !== undefined && excess(r, forecast) > 1;
    return {
      id: reading.id,
      kind: reading.kind,
      at: reading.at,
      residual,
      unit: slope ? 'pct' : 'm',
      accuracy,
      verdict: contradicts ? 'contradicts' : Math.abs(residual) > accuracy ? 'strays' : 'agrees',
      othersDiffer: per * (forecast?.error ?? NaN),
    };
  });
}

interface Forecast {
  /** What the others say minus what was read; for a slope, the length of that vector. */
  readonly error: number;
  readonly deviations: number;
}

/** Leave-one-out forecasts of all readings in a fit. */
function leftOut(
  observations: readonly Observation[],
  kept: readonly number[],
  fit: PlateFit,
): Map<number, Forecast> {
  const forecasts = new Map<number, Forecast>();
  kept.forEach((index, i) => {
    const { reading, terms } = observations[index] as Observation;
    if (reading < 0) return;
    const error = (fit.leaveOneOut[i] as number) * (fit.leaveOneOutSd[i] as number);
    const deviations = fit.leaveOneOut[i] as number;
    const before = forecasts.get(reading);
    forecasts.set(reading, {
      error: terms.length === 3 ? error : lengthOf([before?.error ?? 0, error]),
      deviations: lengthOf([before?.deviations ?? 0, deviations]),
    });
  });
  return forecasts;
}

/** What a fit says of observations it did not have. */
function forecastOf(own: readonly Observation[], fit: PlateFit): Forecast {
  const errors: number[] = [];
  const deviations: number[] = [];
  for (const observation of own) {
    const { terms, value } = observation;
    let said = 0;
    for (let k = 0; k < terms.length; k += 3) {
      said += (terms[k + 2] ?? 0) * plateHeight(fit, terms[k] ?? 0, terms[k + 1] ?? 0);
    }
    errors.push(said - value);
    deviations.push((said - value) / Math.sqrt(variance(fit, fit.target(terms)) + leewayOf(observation)));
  }
  return {
    error: errors.length === 1 ? (errors[0] ?? NaN) : lengthOf(errors),
    deviations: lengthOf(deviations),
  };
}

function observationsByReading(observations: readonly Observation[], readings: number): number[][] {
  const groups = Array.from({ length: readings }, (): number[] => []);
  observations.forEach((observation, i) => {
    groups[observation.reading]?.push(i);
  });
  return groups;
}

const lengthOf = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
