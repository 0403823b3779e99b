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

/** Kinds of places doubt is judged at apart: how near the evidence is, and what the true ground does there. */
export const placeKinds = ['green', 'near', 'between', 'beyond', 'smooth bank'] as const;
export type PlaceKind = (typeof placeKinds)[number];

/** True errors over stated deviations, with the root mean squares of both: metres for heights, percent for slopes. */
export interface Calibration {
  readonly standardised: readonly number[];
  readonly trueRms: number;
  readonly statedRms: number;
}

const LATTICE_M = 2.3;
/** The outermost ground has readings on one side only and is played from by nobody; so is what lies this far from any. */
const EDGE_M = 6;
const REACH_M = 9;
/** A step from a reading; ground among readings, as a survey is meant to have them; and how far those about it may be. */
const NEAR_M = 1.2;
const BETWEEN_M = 3;
const ABOUT_M = 8;
/** A bank: steeper than this, percent; smooth: its slope changes by no more over a metre, percent. */
const BANK_PCT = 6;
const SMOOTH_PCT = 1;

type Pairs = [error: number, sd: number][];

/**
 * Sets the doubt of fits beside their true errors at a lattice over greens and the ground round them, for each kind of place.
 * A smooth bank is also near, between or beyond.
 */
export function calibrate(
  surveys: readonly Omit<SurveyedComplex, 'complex'>[],
): Record<PlaceKind, { readonly height: Calibration; readonly slope: Calibration }> {
  const heights = byKind(() => [] as Pairs);
  const slopes = byKind(() => [] as Pairs);
  for (const { input, green, trueHeight } of surveys) {
    const fitted = fitSurface(input, { cellM: 2 });
    const { westM, southM, eastM, northM } = input.extent;
    for (let y = southM + EDGE_M; y < northM - EDGE_M; y += LATTICE_M) {
      for (let x = westM + EDGE_M; x < eastM - EDGE_M; x += LATTICE_M) {
        const at = planePoint(x, y);
        const kinds = kindsAt(at, input, green, trueHeight);
        if (kinds.length === 0) continue;
        const doubt = doubtAt(fitted, at);
        const error = (dx: number, dy: number): number =>
          fitted.exactHeight(x + dx, y + dy) - trueHeight(planePoint(x + dx, y + dy));
        const half = SLOPE_BASELINE_M / 2;
        const per = 100 / SLOPE_BASELINE_M;
        const height = error(0, 0);
        const east = per * (error(half, 0) - error(-half, 0));
        const north = per * (error(0, half) - error(0, -half));
        for (const kind of kinds) {
          heights[kind].push([height, doubt.heightSdM]);
          slopes[kind].push([east, doubt.slopeSdPct], [north, doubt.slopeSdPct]);
        }
      }
    }
  }
  return byKind((kind) => ({ height: summed(heights[kind]), slope: summed(slopes[kind]) }));
}

function byKind<T>(make: (kind: PlaceKind) => T): Record<PlaceKind, T> {
  return Object.fromEntries(placeKinds.map((kind) => [kind, make(kind)])) as Record<PlaceKind, T>; // all of them
}

function kindsAt(
  at: PlanePoint,
  { heights }: TerrainInput,
  green: readonly (readonly PlanePoint[])[],
  trueHeight: (at: PlanePoint) => number,
): readonly PlaceKind[] {
  if (pointInPolygon(at, green)) return ['green'];
  let nearestM = Infinity;
  const sides = new Set<number>();
  for (const reading of heights) {
    const offM = distanceM(reading.at, at);
    nearestM = Math.min(nearestM, offM);
    if (offM < ABOUT_M)
      sides.add((reading.at.eastM > at.eastM ? 1 : 0) + (reading.at.northM > at.northM ? 2 : 0));
  }
  if (nearestM >= REACH_M) return [];
  const h = (dx: number, dy: number): number => trueHeight(planePoint(at.eastM + dx, at.northM + dy));
  const slopePct = 100 * Math.hypot(h(0.5, 0) - h(-0.5, 0), h(0, 0.5) - h(0, -0.5));
  const turns = [h(1, 0) + h(-1, 0) - 2 * h(0, 0), h(0, 1) + h(0, -1) - 2 * h(0, 0)];
  const bank = slopePct >= BANK_PCT && turns.every((m) => 100 * Math.abs(m) < SMOOTH_PCT);
  const evidence =
    nearestM < NEAR_M ? 'near' : nearestM < BETWEEN_M && sides.size === 4 ? 'between' : 'beyond';
  return bank ? [evidence, 'smooth bank'] : [evidence];
}

const summed = (pairs: Pairs): Calibration => ({
  standardised: pairs.map(([error, sd]) => error / sd),
  trueRms: rms(pairs.map(([error]) => error)),
  statedRms: rms(pairs.map(([, sd]) => sd)),
});

export const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Share of the standardised errors within so many deviations. */
export const within = (values: readonly number[], deviations: number): number =>
  values.filter((z) => Math.abs(z) < deviations).length / values.length;
