import { atlasDocument, headerOf } from '../../../shared/atlas/document.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { distanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';
import { scenePlane } from '../../../shared/planner/scenePlane.ts';
import { generator } from '../../../shared/random/generator.ts';
import { doubtAt, SLOPE_BASELINE_M } from '../../../shared/terrain/confidence.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import type { TerrainInput } from '../../../shared/terrain/terrainInput.ts';
import type { Complex } from '../../../sample-course/complex.ts';
import { kettleHollow } from '../../../sample-course/kettleHollow.ts';
import { longWithy } from '../../../sample-course/longWithy.ts';
import { osselDown, osselPractice } from '../../../sample-course/make.ts';
import { heightAt } from '../../../sample-course/relief.ts';
import { sheepwash } from '../../../sample-course/sheepwash.ts';
import { lowerLawn, theTerrace } from '../../../sample-course/stations.ts';
import { surveyed } from '../../../sample-course/survey.ts';

export const complexes: readonly Complex[] = [sheepwash, longWithy, kettleHollow, lowerLawn, theTerrace];

/** Variations the constants of doubt were found on, and those they are checked on; so with the other greens. */
export const fittedOn = { variations: [0, 1, 2, 3], others: [1, 15] } as const;
export const checkedOn = { variations: [4, 5], others: [16, 27] } as const;

/** A sample green as invented, or with its swells moved and stretched and its readings taken afresh. */
export function variation(complex: Complex, seed: number): Complex {
  if (seed === 0) return complex;
  const random = generator(seed);
  const about = (spread: number): number => spread * (2 * random.uniform() - 1);
  return {
    ...complex,
    seed: complex.seed + 1000 * seed,
    relief: {
      ...complex.relief,
      fallPct: complex.relief.fallPct * (1 + about(0.5)),
      fallBearing: complex.relief.fallBearing + about(40),
      swells: complex.relief.swells.map(({ at, heightM, reachM }) => ({
        at: planePoint(at.eastM + about(4), at.northM + about(4)),
        heightM: heightM * (1 + about(0.6)),
        reachM: reachM * (1 + about(0.25)),
      })),
    },
  };
}

export interface SurveyedComplex {
  readonly complex: Complex;
  readonly input: TerrainInput;
  readonly green: readonly (readonly PlanePoint[])[];
  /** The true height of the ground as it would go on over the bunkers. */
  readonly trueHeight: (at: PlanePoint) => number;
}

export function survey(complex: Complex): SurveyedComplex {
  const base = complex.id.startsWith('s') ? osselPractice() : osselDown();
  const frame = localFrame(headerOf(base).anchor);
  const document = atlasDocument([...base.records.values(), ...surveyed(complex, frame)]);
  const { input, green } = scenePlane(document, complex.id);
  const angle = (complex.playBearing * Math.PI) / 180;
  return {
    complex,
    input,
    green: green.polygon,
    trueHeight: ({ eastM, northM }) => {
      const x = eastM - complex.at.eastM;
      const y = northM - complex.at.northM;
      return heightAt(
        complex.relief,
        complex.green,
        planePoint(x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)),
      );
    },
  };
}

/** True errors over stated deviations, with the root mean squares of both: metres for heights, percent for slopes. */
export interface Calibration {
  readonly standardised: readonly number[];
  readonly trueRms: number;
  readonly statedRms: number;
}

const LATTICE_M = 2.3;
/** The outermost ground has readings on one side only and is played from by nobody; so is what lies this far from any. */
const EDGE_M = 6;
const REACH_M = 5;

/** Sets the doubt of fits beside their true errors at a lattice over the greens, or over the ground round them. */
export function calibrate(
  surveys: readonly Omit<SurveyedComplex, 'complex'>[],
  where: 'green' | 'round',
): { readonly height: Calibration; readonly slope: Calibration } {
  const heights: [error: number, sd: number][] = [];
  const slopes: [error: number, sd: number][] = [];
  for (const { input, green, trueHeight } of surveys) {
    const fitted = fitSurface(input, { cellM: 1 });
    const { westM, southM, eastM, northM } = input.extent;
    for (let y = southM + EDGE_M; y < northM - EDGE_M; y += LATTICE_M) {
      for (let x = westM + EDGE_M; x < eastM - EDGE_M; x += LATTICE_M) {
        const at = planePoint(x, y);
        if (pointInPolygon(at, green) !== (where === 'green')) continue;
        if (!input.heights.some((reading) => distanceM(reading.at, at) < REACH_M)) continue;
        const doubt = doubtAt(fitted, at);
        const error = (dx: number, dy: number): number =>
          fitted.exactHeight(x + dx, y + dy) - trueHeight(planePoint(x + dx, y + dy));
        const half = SLOPE_BASELINE_M / 2;
        const per = 100 / SLOPE_BASELINE_M;
        heights.push([error(0, 0), doubt.heightSdM]);
        slopes.push(
          [per * (error(half, 0) - error(-half, 0)), doubt.slopeSdPct],
          [per * (error(0, half) - error(0, -half)), doubt.slopeSdPct],
        );
      }
    }
  }
  return { height: summed(heights), slope: summed(slopes) };
}

const summed = (pairs: readonly (readonly [error: number, sd: number])[]): Calibration => ({
  standardised: pairs.map(([error, sd]) => error / sd),
  trueRms: rms(pairs.map(([error]) => error)),
  statedRms: rms(pairs.map(([, sd]) => sd)),
});

export const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Share of the standardised errors within so many deviations. */
export const within = (values: readonly number[], deviations: number): number =>
  values.filter((z) => Math.abs(z) < deviations).length / values.length;
