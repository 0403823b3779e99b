import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { bunkerDepth, DEFAULT_LIP_M } from './bunkerShape.ts';
import { evenly } from './folds.ts';
import { flatPolygon, insidePolygon } from './rings.ts';
import type { TerrainInput } from './terrainInput.ts';
import { thinnedGrids, thinnedHeights } from './thinned.ts';

/** Length of the level a slope is read with, metres (about 2 ft): a slope is the rise over it. */
export const LEVEL_LENGTH_M = 0.6;
/** A reading is never taken as better than this, so that a slip of the keyboard cannot make two readings contradict. */
const BEST_HEIGHT_ACCURACY_M = 1e-4;
const BEST_SLOPE_ACCURACY = 1e-4;
/** One standard deviation of a contour's height where its line was drawn, metres, and how densely its points are taken. */
const CONTOUR_ACCURACY_M = 0.03;
const CONTOUR_SPACING_M = 1.5;
/** A value that is a weighted sum of the heights at a few points, with its variance. */
export interface Observation {
  /** Flat [east, north, weight] triples. */
  readonly terms: readonly number[];
  readonly value: number;
  /** Of the error of the reading. */
  readonly variance: number;
  /** Variance the fit allows it where the ground is stiffer than the whole; else its own. */
  readonly leeway?: number;
  /** Index of the reading it came from; -1 for what was put in for want of evidence. */
  readonly reading: number;
}

export interface Reading {
  readonly id: string;
  readonly kind: 'height' | 'slope' | 'contour' | 'grid' | 'plane';
  readonly at: PlanePoint;
}

export interface Evidence {
  readonly readings: readonly Reading[];
  readonly observations: readonly Observation[];
}

/**
 * The readings of a complex as observations of one surface: the ground as it would go on over the bunkers. A height read
 * on the sand is raised by the depth of the bunker there.
 */
export function evidenceOf(input: TerrainInput): Evidence {
  const readings: Reading[] = [];
  const observations: Observation[] = [];
  const raisedBy = sandAt(input.areas);

  for (const height of thinnedHeights(input.heights)) {
    observations.push({
      terms: [height.at.eastM, height.at.northM, 1],
      value: height.heightM + raisedBy(height.at),
      variance: squared(Math.max(height.accuracyM, BEST_HEIGHT_ACCURACY_M)),
      reading: readings.length,
    });
    readings.push({ id: height.id, kind: 'height', at: height.at });
  }
  for (const node of thinnedGrids(input)) {
    observations.push({
      terms: [node.at.eastM, node.at.northM, 1],
      value: node.heightM + raisedBy(node.at),
      variance: squared(Math.max(node.accuracyM, BEST_HEIGHT_ACCURACY_M)),
      reading: readings.length,
    });
    readings.push({ id: node.id, kind: 'grid', at: node.at });
  }
  for (const slope of input.slopes) {
    observations.push(...slopeObservations(slope, LEVEL_LENGTH_M / 2, readings.length));
    readings.push({ id: slope.id, kind: 'slope', at: slope.at });
  }
  for (const plane of input.planes ?? []) {
    observations.push(...slopeObservations(plane, plane.reachM, readings.length));
    readings.push({ id: plane.id, kind: 'plane', at: plane.at });
  }
  for (const contour of input.contours) {
    for (const at of evenly(contour.points, CONTOUR_SPACING_M)) {
      observations.push({
        terms: [at.eastM, at.northM, 1],
        value: contour.heightM,
        variance: squared(CONTOUR_ACCURACY_M),
        reading: readings.length,
      });
      readings.push({ id: contour.id, kind: 'contour', at });
    }
  }
  return { readings, observations };
}

/** How far the sand at a point lies below the ground that goes on over its bunker, metres; 0 elsewhere. */
export function sandAt(areas: TerrainInput['areas']): (at: PlanePoint) => number {
  const bunkers = areas
    .filter((area) => area.kind === 'bunker')
    .map((area) => ({ polygon: flatPolygon(area.polygon), lipM: area.lipHeightM ?? DEFAULT_LIP_M }));
  const depth = new Float64Array(3);
  return (at) => {
    for (const bunker of bunkers) {
      if (!insidePolygon(bunker.polygon, at.eastM, at.northM)) continue;
      bunkerDepth(bunker.polygon, bunker.lipM, at.eastM, at.northM, depth);
      return depth[0] as number;
    }
    return 0;
  };
}

/** A slope as two differences of height, eastwards and northwards, over `halfM` to either side. */
function slopeObservations(
  slope: TerrainInput['slopes'][number],
  halfM: number,
  reading: number,
): readonly [Observation, Observation] {
  const bearing = (slope.downhillBearingDeg * Math.PI) / 180;
  const variance = squared(Math.max(slope.accuracyPct / 100, BEST_SLOPE_ACCURACY));
  const { eastM, northM } = slope.at;
  const per = 1 / (2 * halfM);
  return [
    {
      terms: [eastM + halfM, northM, per, eastM - halfM, northM, -per],
      value: (-slope.slopePct / 100) * sin(bearing),
      variance,
      reading,
    },
    {
      terms: [eastM, northM + halfM, per, eastM, northM - halfM, -per],
      value: (-slope.slopePct / 100) * cos(bearing),
      variance,
      reading,
    },
  ];
}

/**
 * What has to be assumed where the evidence leaves a plane undetermined: level ground in the directions nothing was
 * measured in, and height 0 at the middle where only slopes were. Nothing measured is contradicted by it.
 */
export function fillers(observations: readonly Observation[]): Observation[] {
  const heights = observations.filter((o) => o.terms.length === 3);
  const measured = heights.length > 0 ? heights : observations;
  let east = 0;
  let north = 0;
  for (const o of measured) {
    east += ((o.terms[0] ?? 0) + (o.terms[o.terms.length - 3] ?? 0)) / (2 * measured.length);
    north += ((o.terms[1] ?? 0) + (o.terms[o.terms.length - 2] ?? 0)) / (2 * measured.length);
  }
  const assumed: Observation[] = [];
  if (heights.length === 0) assumed.push({ terms: [east, north, 1], value: 0, variance: 1e-4, reading: -1 });
  if (observations.length > heights.length) return assumed;

  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const o of heights) {
    const dx = (o.terms[0] ?? 0) - east;
    const dy = (o.terms[1] ?? 0) - north;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  // Spread along and across the line that the points lie on best.
  const middle = (xx + yy) / 2;
  const half = Math.sqrt(((xx - yy) / 2) * ((xx - yy) / 2) + xy * xy);
  const level = (x: number, y: number): Observation => ({
    terms: [
      east + (x * LEVEL_LENGTH_M) / 2,
      north + (y * LEVEL_LENGTH_M) / 2,
      1 / LEVEL_LENGTH_M,
      east - (x * LEVEL_LENGTH_M) / 2,
      north - (y * LEVEL_LENGTH_M) / 2,
      -1 / LEVEL_LENGTH_M,
    ],
    value: 0,
    variance: squared(0.05),
    reading: -1,
  });
  if (middle + half < 1e-6) return [...assumed, level(1, 0), level(0, 1)];
  if (middle - half < 1e-6 * (middle + half)) {
    // Direction of least spread: the eigenvector of the smaller eigenvalue, by the better conditioned of its two forms.
    const a = xx >= yy ? { x: -xy, y: xx - (middle - half) } : { x: yy - (middle - half), y: -xy };
    const length = Math.sqrt(a.x * a.x + a.y * a.y);
    return [...assumed, level(a.x / length, a.y / length)];
  }
  return assumed;
}

const squared = (x: number): number => x * x;
