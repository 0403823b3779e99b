import { planePoint } from '../../../shared/geometry/points.ts';
import type { PlanePoint, PlaneRing } from '../../../shared/geometry/points.ts';
import type { TerrainArea } from '../../../shared/terrain/terrainInput.ts';
import type { AreaKind } from '../../../shared/words/vocabulary.ts';

/** An invented green complex with every kind of area, in the plane: about 55 x 45 m round the origin. */
const points = (...flat: readonly number[]): PlanePoint[] => {
  const out: PlanePoint[] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) out.push(planePoint(flat[i] ?? 0, flat[i + 1] ?? 0));
  return out;
};

const about = (east: number, north: number, radius: number, count = 14): PlaneRing =>
  Array.from({ length: count }, (_, i) => {
    const a = (2 * Math.PI * i) / count;
    return planePoint(east + radius * Math.cos(a), north + radius * Math.sin(a));
  });

const scaled = (ring: PlaneRing, by: number): PlaneRing =>
  ring.map((p) => planePoint(p.eastM * by, p.northM * by));

const greenRing = points(
  -12.3,
  -2,
  -12,
  4,
  -10,
  9.2,
  -5,
  12.6,
  1,
  13.4,
  5,
  11.8,
  8,
  8,
  11.2,
  3,
  12.6,
  -2,
  12,
  -7,
  8.5,
  -11.4,
  2,
  -13.2,
  -4.5,
  -12.8,
  -9,
  -9.8,
  -11.6,
  -6,
);

export const area = (
  id: string,
  kind: AreaKind,
  name: string,
  ring: PlaneRing,
  more: Partial<TerrainArea> = {},
): TerrainArea => ({
  id,
  kind,
  name,
  polygon: [ring],
  lipHeightM: null,
  treeHeightM: null,
  canopyBaseM: null,
  ...more,
});

export const everyKind: readonly TerrainArea[] = [
  area(
    'heavy',
    'heavyRough',
    '',
    points(
      -30,
      26,
      -30,
      -1,
      -25,
      -2,
      -22.6,
      3,
      -20,
      9,
      -14,
      14,
      -8,
      16.4,
      2,
      17.4,
      12,
      17,
      19,
      14,
      22,
      8,
      23,
      1,
      27,
      1,
      27,
      26,
    ),
  ),
  area('fair', 'fairway', 'fairway', points(-9, -26, -7.5, -21, -6, -19, 12, -19, 14, -21, 15, -26)),
  area(
    'appr',
    'approach',
    'approach',
    points(
      -8,
      -20,
      -6,
      -15.5,
      -1,
      -13,
      8,
      -11,
      12.6,
      -3,
      12.4,
      3.5,
      15,
      4.2,
      18,
      2,
      19.4,
      -3,
      18,
      -9,
      14,
      -16,
      12.6,
      -19.5,
    ),
  ),
  area('fringe', 'fringe', '', scaled(greenRing, 1.09)),
  area('green', 'green', '', greenRing),
  area(
    'sandNw',
    'bunker',
    '',
    points(-19, 2, -20.6, 4.6, -19.6, 7, -17.6, 7.4, -16, 5, -15.6, 2.6, -17, 1.6),
    {
      lipHeightM: 0.7,
    },
  ),
  area(
    'sandSw',
    'bunker',
    'front left',
    points(-17.6, -8.5, -14.6, -7.6, -11.8, -9, -9.8, -11.6, -9.4, -13.9, -11, -15, -14, -13, -17, -11),
    { lipHeightM: 1 },
  ),
  area(
    'sandNe',
    'bunker',
    '',
    points(11.4, 15.2, 13.4, 15.8, 15.6, 13.4, 18, 11, 17.6, 8, 15.4, 6.6, 13, 9, 11.6, 12.4),
    { lipHeightM: 1.3 },
  ),
  area(
    'pond',
    'penaltyArea',
    'pond',
    points(
      -30,
      -8,
      -26,
      -8.4,
      -22.6,
      -9.6,
      -19.4,
      -12.4,
      -18.2,
      -16,
      -19,
      -19.6,
      -22,
      -21.4,
      -26,
      -21.8,
      -30,
      -21.6,
    ),
  ),
  area('bare', 'bare', '', points(20, -10, 22.4, -10.8, 23.4, -13.6, 22.6, -16.4, 20, -15.4, 18.8, -12.6)),
  area(
    'path',
    'path',
    'path',
    points(
      25,
      26,
      23.6,
      16,
      22.6,
      6,
      23.4,
      -6,
      23.8,
      -16,
      23,
      -26,
      25,
      -26,
      25.8,
      -16,
      25.2,
      -6,
      24.4,
      6,
      25.4,
      16,
      26.6,
      26,
    ),
  ),
  area('ob', 'outOfBounds', 'out of bounds', points(27.5, 26, 27, 8, 27.2, -8, 27.6, -26, 34, -26, 34, 26)),
  area('tee', 'tee', '', points(-30, 14, -24.6, 15.8, -25.8, 19.4, -31, 17.6)),
  area('ash', 'tree', '', about(-18.6, 16.6, 3.1), { treeHeightM: 12, canopyBaseM: 2 }),
  area('alder', 'tree', '', about(-25.6, 9.6, 2.8), { treeHeightM: 9, canopyBaseM: 1.5 }),
  area('elm', 'tree', '', about(20.6, 15.2, 2.4), { treeHeightM: 9, canopyBaseM: 1.5 }),
];

/** A two-tier surface over the complex, analytic: fall of about 2 % to the south-west and a step across the north. */
export const heightAt = (eastM: number, northM: number): number =>
  12.3 +
  0.012 * northM +
  0.006 * eastM +
  0.12 / (1 + Math.exp(-(northM - 3 - 0.12 * eastM) / 0.9)) +
  0.06 * Math.sin(eastM / 6) * Math.cos(northM / 7);
