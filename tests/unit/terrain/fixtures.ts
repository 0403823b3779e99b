import { type Generator, generator } from '../../../shared/random/generator.ts';
import type { TerrainArea, TerrainInput } from '../../../shared/terrain/terrainInput.ts';
import type { PlanePoint, PlaneRing } from '../../../shared/geometry/points.ts';
import type { AreaKind } from '../../../shared/words/vocabulary.ts';

type Height = (eastM: number, northM: number) => number;

export const emptyInput = (sizeM = 40): TerrainInput => ({
  areas: [],
  heights: [],
  slopes: [],
  breaklines: [],
  contours: [],
  walls: [],
  extent: { westM: 0, southM: 0, eastM: sizeM, northM: sizeM },
});

/** Ground like a green and its surrounds: about 2 % with swells of a few decimetres. */
export const swells: Height = (x, y) => 0.3 + 0.02 * x - 0.015 * y + 0.15 * Math.sin(x / 6) * Math.cos(y / 7);

export function heightReadings(
  height: Height,
  count: number,
  random: Generator = generator(count),
  noiseM = 0,
  accuracyM = 0.01,
): TerrainInput['heights'] {
  return Array.from({ length: count }, (_, i) => {
    const at = { eastM: 40 * random.uniform(), northM: 40 * random.uniform() };
    const heightM = height(at.eastM, at.northM) + noiseM * random.normal();
    return { id: `h${i}`, at, heightM, accuracyM };
  });
}

/** Readings of a level 0.6 m long. */
export function slopeReadings(
  height: Height,
  count: number,
  random: Generator = generator(1000 + count),
): TerrainInput['slopes'] {
  return Array.from({ length: count }, (_, i) => {
    const at = { eastM: 40 * random.uniform(), northM: 40 * random.uniform() };
    return { id: `s${i}`, at, ...levelOn(height, at), accuracyPct: 0.2 };
  });
}

export function levelOn(height: Height, at: PlanePoint): { slopePct: number; downhillBearingDeg: number } {
  const east = (height(at.eastM + 0.3, at.northM) - height(at.eastM - 0.3, at.northM)) / 0.6;
  const north = (height(at.eastM, at.northM + 0.3) - height(at.eastM, at.northM - 0.3)) / 0.6;
  return {
    slopePct: 100 * Math.hypot(east, north),
    downhillBearingDeg: (Math.atan2(-east, -north) * 180) / Math.PI,
  };
}

export const circle = (eastM: number, northM: number, radiusM: number, corners = 48): PlaneRing =>
  Array.from({ length: corners }, (_, i) => ({
    eastM: eastM + radiusM * Math.cos((2 * Math.PI * i) / corners),
    northM: northM + radiusM * Math.sin((2 * Math.PI * i) / corners),
  }));

export const area = (
  kind: AreaKind,
  ring: PlaneRing,
  more: Partial<Pick<TerrainArea, 'lipHeightM' | 'treeHeightM' | 'canopyBaseM'>> = {},
): TerrainArea => ({
  id: kind,
  kind,
  name: `the ${kind}`,
  polygon: [ring],
  lipHeightM: null,
  treeHeightM: null,
  canopyBaseM: null,
  ...more,
});

/** Root mean square over the middle of the 40 m box. */
export function rmsOver(error: (eastM: number, northM: number) => number): number {
  let sum = 0;
  let count = 0;
  for (let x = 3; x <= 37; x += 0.85) {
    for (let y = 3; y <= 37; y += 0.85) {
      const e = error(x, y);
      sum += e * e;
      count += 1;
    }
  }
  return Math.sqrt(sum / count);
}
