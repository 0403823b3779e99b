import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import Delaunator from 'delaunator';
import { generator } from '../../shared/random/generator.ts';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import {
  centralGradient,
  hornGradient,
  slopeOfGradient,
  type Window3x3,
} from '../../shared/terrain/slope.ts';
import type { TerrainInput } from '../../shared/terrain/terrainInput.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const FRANKE =
  'Franke R. (1982) "Scattered data interpolation: tests of some methods", Math. Comp. 38(157):181-200';
const HORN = 'Horn (1981) Proc. IEEE 69:14-47, worked example of a GIS manual';
const ZEVENBERGEN = 'Zevenbergen & Thorne (1987) Earth Surf. Process. Landf. 12:47-56';

function franke(x: number, y: number): number {
  const square = (v: number): number => v * v;
  return (
    0.75 * Math.exp(-(square(9 * x - 2) + square(9 * y - 2)) / 4) +
    0.75 * Math.exp(-square(9 * x + 1) / 49 - (9 * y + 1) / 10) +
    0.5 * Math.exp(-(square(9 * x - 7) + square(9 * y - 3)) / 4) -
    0.2 * Math.exp(-square(9 * x - 4) - square(9 * y - 7))
  );
}

/** Radical inverse: one coordinate of a Halton sequence. */
function halton(index: number, base: number): number {
  let share = 1;
  let value = 0;
  for (let i = index; i > 0; i = Math.floor(i / base)) {
    share /= base;
    value += share * (i % base);
  }
  return value;
}

type Spot = readonly [x: number, y: number];

const edgeSpots: readonly Spot[] = [
  [0, 0],
  [0.5, 0],
  [1, 0],
  [0, 0.5],
  [1, 0.5],
  [0, 1],
  [0.5, 1],
  [1, 1],
];
const haltonSpots = (count: number): Spot[] => [
  ...edgeSpots,
  ...Array.from({ length: count }, (_, i): Spot => [halton(i + 1, 2), halton(i + 1, 3)]),
];

function evidence(
  spots: readonly Spot[],
  height: (x: number, y: number) => number,
  sizeM: number,
): TerrainInput {
  return {
    areas: [],
    heights: spots.map(([x, y], i) => ({
      id: `h${i}`,
      at: { eastM: x, northM: y },
      heightM: height(x, y),
      accuracyM: 1e-4,
    })),
    slopes: [],
    breaklines: [],
    contours: [],
    walls: [],
    extent: { westM: 0, southM: 0, eastM: sizeM, northM: sizeM },
  };
}

/** Root mean square over a 91 x 91 lattice on [0.05, 0.95]^2. */
function rms(error: (x: number, y: number) => number): number {
  let sum = 0;
  for (let i = 0; i <= 90; i += 1) {
    for (let j = 0; j <= 90; j += 1) {
      const e = error(0.05 + 0.01 * i, 0.05 + 0.01 * j);
      sum += e * e;
    }
  }
  return Math.sqrt(sum / (91 * 91));
}

/** Linear on the Delaunay triangles: what the smooth surface must beat. */
function triangulated(spots: Spot[], heights: readonly number[]): (x: number, y: number) => number {
  const { triangles } = Delaunator.from(
    spots,
    (s) => s[0],
    (s) => s[1],
  );
  const corner = (k: number): readonly [number, number, number] => {
    const index = triangles[k] ?? 0;
    const [x, y] = spots[index] ?? [NaN, NaN];
    return [x, y, heights[index] ?? NaN];
  };
  return (x, y) => {
    for (let k = 0; k < triangles.length; k += 3) {
      const [ax, ay, az] = corner(k);
      const [bx, by, bz] = corner(k + 1);
      const [cx, cy, cz] = corner(k + 2);
      const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
      const b = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / area;
      const c = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / area;
      if (b >= -1e-12 && c >= -1e-12 && b + c <= 1 + 1e-12) return az + b * (bz - az) + c * (cz - az);
    }
    return NaN;
  };
}

function weighted(spots: readonly Spot[], heights: readonly number[]): (x: number, y: number) => number {
  return (x, y) => {
    let sum = 0;
    let weights = 0;
    spots.forEach(([sx, sy], i) => {
      const d2 = (x - sx) * (x - sx) + (y - sy) * (y - sy) + 1e-300;
      sum += (heights[i] ?? NaN) / d2;
      weights += 1 / d2;
    });
    return sum / weights;
  };
}

function frankeRows(): CheckRow[] {
  const rows: CheckRow[] = [];
  const values: readonly (readonly [string, number, number, number])[] = [
    ['f(0, 0)', 0, 0, 0.766421],
    ['f(1/2, 1/2)', 0.5, 0.5, 0.325762],
    ['f(1, 1)', 1, 1, 0.03587],
    ['f(2/9, 2/9)', 2 / 9, 2 / 9, 1.213138],
  ];
  for (const [name, x, y, expected] of values) {
    rows.push({
      quantity: `Franke's function as used here, ${name}`,
      source: FRANKE,
      mark: 'found',
      expected,
      ours: franke(x, y),
      tolerance: 5e-7,
      unit: '',
    });
  }
  const errors: readonly (readonly [
    count: number,
    plate: number,
    linear: number,
    inverse: number,
    half: number,
  ])[] = [
    [33, 0.0234, 0.041, 0.097, 5e-5],
    [100, 0.0042, 0.018, 0.076, 5e-5],
    [400, 0.0004, 0.0052, 0.06, 5e-5],
  ];
  for (const [count, plate, linear, inverse, half] of errors) {
    const spots = haltonSpots(count);
    const heights = spots.map(([x, y]) => franke(x, y));
    const fitted = fitSurface(evidence(spots, franke, 1), { cellM: 0.02 });
    const out = new Float64Array(3);
    const source = `${FRANKE}; errors from an independent reference model, ${count} Halton(2,3) points and 8 on the edge`;
    rows.push(
      {
        quantity: `rms error of the fitted surface on Franke's function, ${count} points, thin-plate row`,
        source,
        mark: 'computed',
        expected: plate,
        ours: rms((x, y) => {
          fitted.sampleHeight(x, y, out);
          return (out[0] ?? NaN) - franke(x, y);
        }),
        tolerance: half,
        unit: '',
        note: 'read from the grid a ball rolls on, not from the closed form',
      },
      {
        quantity: `the same by linear interpolation on Delaunay triangles`,
        source,
        mark: 'computed',
        expected: linear,
        ours: ((surface) => rms((x, y) => surface(x, y) - franke(x, y)))(triangulated(spots, heights)),
        tolerance: linear * 0.02,
        unit: '',
        note: 'a peer, not ours: it shows that the points and the norm are those of the reference',
      },
      {
        quantity: `the same by inverse squared distance`,
        source,
        mark: 'computed',
        expected: inverse,
        ours: ((surface) => rms((x, y) => surface(x, y) - franke(x, y)))(weighted(spots, heights)),
        tolerance: 1e-3,
        unit: '',
        note: 'a peer, not ours',
      },
    );
  }
  return rows;
}

function slopeRows(): CheckRow[] {
  const steep: Window3x3 = [50, 45, 50, 30, 30, 30, 8, 10, 10];
  const gentle: Window3x3 = [1.08, 1.1, 1.14, 1.02, 1.05, 1.1, 0.99, 1.01, 1.05];
  const rows: CheckRow[] = [];
  const add = (
    quantity: string,
    source: string,
    mark: CheckRow['mark'],
    expected: number,
    ours: number,
    tolerance: number,
    unit: string,
  ): void => {
    rows.push({ quantity, source, mark, expected, ours, tolerance, unit });
  };
  const degrees = ([x, y]: readonly [number, number]): number =>
    (Math.atan(slopeOfGradient(x, y).slopePct / 100) * 180) / Math.PI;
  const horn = hornGradient(steep, 5);
  add('Horn, steep 3 x 3: rise to the east', HORN, 'from memory', 0.05, horn[0], 1e-12, 'm/m');
  add('Horn, steep 3 x 3: rise to the south', HORN, 'from memory', -3.8, -horn[1], 1e-12, 'm/m');
  add('Horn, steep 3 x 3: slope', HORN, 'from memory', 75.2577, degrees(horn), 5e-5, 'deg');
  const central = centralGradient(steep, 5);
  add(
    'Central differences, steep 3 x 3: rise to the south',
    ZEVENBERGEN,
    'computed',
    -3.5,
    -central[1],
    1e-12,
    'm/m',
  );
  add(
    'Central differences, steep 3 x 3: slope',
    ZEVENBERGEN,
    'computed',
    74.0546,
    degrees(central),
    5e-5,
    'deg',
  );
  const easy = hornGradient(gentle, 1);
  const easySlope = slopeOfGradient(...easy);
  const independent = 'reference model worked out independently';
  add('Horn, green-like 3 x 3: rise to the east', independent, 'computed', 0.035, easy[0], 1e-12, 'm/m');
  add('Horn, green-like 3 x 3: slope', independent, 'computed', 5.701, easySlope.slopePct, 5e-4, '%');
  add(
    'Horn, green-like 3 x 3: bearing it falls in',
    independent,
    'computed',
    217.87,
    easySlope.downhillBearingDeg,
    5e-3,
    'deg',
  );
  const easyCentral = slopeOfGradient(...centralGradient(gentle, 1));
  add(
    'Central differences, green-like 3 x 3: slope',
    independent,
    'computed',
    6.021,
    easyCentral.slopePct,
    5e-4,
    '%',
  );
  add(
    'Central differences, green-like 3 x 3: bearing',
    independent,
    'computed',
    221.63,
    easyCentral.downhillBearingDeg,
    5e-3,
    'deg',
  );
  return rows;
}

function exactRows(): CheckRow[] {
  const plane = (x: number, y: number): number => 12.3 + 0.021 * x - 0.034 * y;
  const quadric = (x: number, y: number): number => plane(x, y) + 4e-4 * x * x - 6e-4 * x * y + 3e-4 * y * y;
  const spots = haltonSpots(40).map(([x, y]): Spot => [40 * x, 40 * y]);
  const fittedPlane = fitSurface(evidence(spots, plane, 40));
  const out = new Float64Array(3);
  let worst = 0;
  for (let k = 0; k < 400; k += 1) {
    const x = 40 * halton(k + 1, 5);
    const y = 40 * halton(k + 1, 7);
    fittedPlane.sampleHeight(x, y, out);
    worst = Math.max(worst, Math.abs((out[0] ?? NaN) - plane(x, y)));
  }
  const window = (f: (x: number, y: number) => number, x: number, y: number): Window3x3 => [
    f(x - 1, y + 1),
    f(x, y + 1),
    f(x + 1, y + 1),
    f(x - 1, y),
    f(x, y),
    f(x + 1, y),
    f(x - 1, y - 1),
    f(x, y - 1),
    f(x + 1, y - 1),
  ];
  const [east, north] = centralGradient(window(quadric, 7, 11), 1);
  const [hornEast, hornNorth] = hornGradient(window(quadric, 7, 11), 1);
  const trueEast = 0.021 + 8e-4 * 7 - 6e-4 * 11;
  const trueNorth = -0.034 - 6e-4 * 7 + 6e-4 * 11;
  // A plate of least bending is not a quadric, but must close in on one at the rate of its smoothness as points are added.
  const off = [60, 240].map((count) => {
    const points = haltonSpots(count).map(([x, y]): Spot => [40 * x, 40 * y]);
    const fitted = fitSurface(evidence(points, quadric, 40));
    return rms((x, y) => fitted.exactHeight(40 * x, 40 * y) - quadric(40 * x, 40 * y));
  });
  const algebra = 'algebra: exact for such ground';
  return [
    {
      quantity: 'A plane through 48 readings: worst departure',
      source: algebra,
      mark: 'computed',
      expected: 0,
      ours: worst,
      tolerance: 1e-9,
      unit: 'm',
    },
    {
      quantity: 'A quadric, central differences: error of the gradient',
      source: algebra,
      mark: 'computed',
      expected: 0,
      ours: Math.abs(east - trueEast) + Math.abs(north - trueNorth),
      tolerance: 1e-12,
      unit: 'm/m',
    },
    {
      quantity: 'A quadric, Horn: error of the gradient',
      source: algebra,
      mark: 'computed',
      expected: 0,
      ours: Math.abs(hornEast - trueEast) + Math.abs(hornNorth - trueNorth),
      tolerance: 1e-12,
      unit: 'm/m',
    },
    {
      quantity: 'A quadric through 248 readings: rms departure of the surface',
      source:
        'approximation theory: a plate of least bending closes in on smooth ground; 1 mm is a fifth of a levelling error',
      mark: 'computed',
      expected: [0, 0.001],
      ours: off[1] ?? NaN,
      tolerance: 0,
      unit: 'm',
    },
    {
      quantity: 'The same, over that with 68 readings',
      source: 'four times the readings halve the spacing; error of the plate falls at least with its square',
      mark: 'computed',
      expected: [0, 0.5],
      ours: (off[1] ?? NaN) / (off[0] ?? NaN),
      tolerance: 0,
      unit: '',
    },
  ];
}

const HILL =
  'Maunga Whau, 87 x 61 heights on 10 m, digitised by R. Ihaka; `volcano` of R, as carried by vega-datasets';

/** Real ground: some of its heights as evidence, all the others held back and foretold by three methods. */
function heldOutRows(): CheckRow[] {
  const path = resolve(import.meta.dirname, '../../node_modules/vega-datasets/data/volcano.json');
  const { width, height, values } = JSON.parse(readFileSync(path, 'utf8')) as {
    readonly width: number;
    readonly height: number;
    readonly values: readonly number[];
  };
  const node = (i: number): Spot => [10 * (i % width), 10 * (height - 1 - Math.floor(i / width))];
  const corners = [0, width - 1, width * (height - 1), width * height - 1];
  return [100, 300].flatMap((count): CheckRow[] => {
    const random = generator(count);
    const chosen = new Set(corners);
    while (chosen.size < count) chosen.add(Math.floor(random.uniform() * values.length));
    const known = [...chosen];
    const spots = known.map(node);
    const heights = known.map((i) => values[i] ?? NaN);
    const input = evidence(spots, () => 0, 10 * width);
    const fitted = fitSurface(
      // Heights in whole metres: their rounding has a standard deviation of 0.29 m.
      {
        ...input,
        heights: input.heights.map((h, i) => ({ ...h, heightM: heights[i] ?? NaN, accuracyM: 0.29 })),
      },
      { cellM: 5 },
    );
    const linear = triangulated(spots, heights);
    const inverse = weighted(spots, heights);
    const out = new Float64Array(3);
    const errors = [0, 0, 0];
    let held = 0;
    values.forEach((truth, i) => {
      if (chosen.has(i)) return;
      const [x, y] = node(i);
      fitted.sampleHeight(x, y, out);
      [out[0] ?? NaN, linear(x, y), inverse(x, y)].forEach((foretold, k) => {
        errors[k] = (errors[k] ?? NaN) + (foretold - truth) ** 2;
      });
      held += 1;
    });
    const [ours = NaN, triangles = NaN, distances = NaN] = errors.map((sum) => Math.sqrt(sum / held));
    const note = `rms of ${held} heights held back, m: fitted surface ${ours.toFixed(2)}, Delaunay linear ${triangles.toFixed(2)}, inverse squared distance ${distances.toFixed(2)}`;
    return [
      {
        quantity: `Real ground, ${count} heights known: our rms error over that of linear triangles`,
        source: HILL,
        mark: 'computed',
        expected: [0, 1],
        ours: ours / triangles,
        tolerance: 0,
        unit: '',
        note,
      },
      {
        quantity: `Real ground, ${count} heights known: our rms error over that of inverse distance`,
        source: HILL,
        mark: 'computed',
        expected: [0, 0.7],
        ours: ours / distances,
        tolerance: 0,
        unit: '',
        note,
      },
    ];
  });
}

const group: CheckGroup = {
  title: 'Terrain: the fitted surface and its slopes',
  measure: () => [...frankeRows(), ...slopeRows(), ...exactRows(), ...heldOutRows()],
};
export default group;
