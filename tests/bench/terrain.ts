/**
 * Fitting and reading a surface, each as a ratio against a peer measured in the same run. Run with
 * `npx tsx tests/bench/terrain.ts`.
 */
import { CholeskyDecomposition, LuDecomposition, Matrix } from 'ml-matrix';
import { generator } from '../../shared/random/generator.ts';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import { measureNext, slopesAt } from '../../shared/terrain/measureNext.ts';
import { placesOver } from '../../shared/terrain/placesOver.ts';
import { surfaceEnsemble } from '../../shared/terrain/surfaceEnsemble.ts';
import { surveyedGround } from '../../shared/terrain/surveyedGround.ts';
import { readGround } from '../../renderer/workers/readGround.ts';
import { gridImports } from './gridImport.ts';
import { area, circle, emptyInput, heightReadings, slopeReadings, swells } from '../unit/terrain/fixtures.ts';

/** Median of the processor time of some runs, milliseconds, after warming up: what else the machine does counts little. */
function timeMs(run: () => unknown, runs = 7): number {
  run();
  const times = Array.from({ length: runs }, () => {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? NaN;
}

const kernel = (dx: number, dy: number): number => {
  const r2 = dx * dx + dy * dy;
  return r2 > 0 ? 0.5 * r2 * Math.log(r2) : 0;
};

/** The same plate by a general dense solver: assemble, factor by LU, solve, and sum the kernels on the same grid. */
function denseFit(heights: ReturnType<typeof heightReadings>, noise: number, cellM: number): number {
  const n = heights.length;
  const a = Matrix.zeros(n + 3, n + 3);
  heights.forEach(({ at: p }, i) => {
    heights.forEach(({ at: q }, j) => {
      a.set(i, j, kernel(p.eastM - q.eastM, p.northM - q.northM) + (i === j ? noise : 0));
    });
    [1, p.eastM, p.northM].forEach((value, k) => {
      a.set(i, n + k, value);
      a.set(n + k, i, value);
    });
  });
  const values = Matrix.columnVector([...heights.map((h) => h.heightM), 0, 0, 0]);
  const solved = new LuDecomposition(a).solve(values).to1DArray();
  let checksum = 0;
  for (let y = 0; y <= 40; y += cellM) {
    for (let x = 0; x <= 40; x += cellM) {
      let height = (solved[n] ?? NaN) + (solved[n + 1] ?? NaN) * x + (solved[n + 2] ?? NaN) * y;
      heights.forEach(({ at }, i) => {
        height += (solved[i] ?? NaN) * kernel(x - at.eastM, y - at.northM);
      });
      checksum += height;
    }
  }
  return checksum;
}

const row = (what: string, ours: number, peer: number, unit: string, peerName: string): void => {
  console.log(
    `${what.padEnd(58)} ours ${ours.toFixed(2)} ${unit}, ${peerName} ${peer.toFixed(2)} ${unit}: ${(peer / ours).toFixed(2)} x`,
  );
};

for (const count of [40, 100, 150]) {
  const input = { ...emptyInput(), heights: heightReadings(swells, count, generator(1), 0.005) };
  const fitted = fitSurface(input);
  const { cellM } = fitted;
  const noise = (1e-4 * 8 * Math.PI) / (fitted.plate?.bendingVariance ?? NaN);
  row(
    `fit of 40 x 40 m, ${count} heights, ${cellM.toFixed(2)} m grid, all judged`,
    timeMs(() => fitSurface(input)),
    timeMs(() => denseFit(input.heights, noise, cellM)),
    'ms',
    'dense LU solve (heights only, stiffness given)',
  );
}

const survey = {
  ...emptyInput(),
  heights: heightReadings(swells, 100, generator(2), 0.005),
  slopes: slopeReadings(swells, 25),
  breaklines: [
    {
      id: 'tier',
      points: [
        { eastM: 8, northM: 20 },
        { eastM: 20, northM: 22 },
        { eastM: 32, northM: 20 },
      ],
    },
  ],
};
const fitted = fitSurface(survey);
let edit = 0;
const refit = timeMs(() => {
  edit += 1;
  const heights = survey.heights.map((h, i) => (i === edit % 100 ? { ...h, heightM: h.heightM + 0.01 } : h));
  return surveyedGround(fitSurface({ ...survey, heights }), survey);
});
row('refit after an edit: 100 heights, 25 slopes, a tier edge', refit, 300, 'ms', 'allowed');

const lattice = Array.from({ length: 81 * 81 }, (_, i) => {
  const at = { eastM: 0.5 * (i % 81), northM: 0.5 * Math.floor(i / 81) };
  return { at, heightM: swells(at.eastM, at.northM) };
});
const withGrid = {
  ...survey,
  areas: [area('green', circle(20, 20, 11))],
  grids: [{ id: 'grid', nodes: lattice, accuracyM: 0.05 }],
};
row(
  'the same with a green and a dense grid of 6,561 heights',
  timeMs(() => surveyedGround(fitSurface(withGrid), withGrid)),
  300,
  'ms',
  'allowed',
);
const green = [circle(20, 20, 11)];
const look = { slopes: false, arrows: false, water: false, fair: false, stimpFt: 10, contourM: 0.05 };
let asked = 0;
row(
  'refit as the window asks for it: doubt, where to measure, contours',
  timeMs(() => {
    asked += 1;
    return readGround({
      ...{ groundKey: String(asked), input: survey, greens: [green], ridgeIds: [], look, heavyOnly: false },
      units: { system: 'metres', paceM: 1 },
    });
  }),
  300,
  'ms',
  'allowed',
);
const spots = placesOver([circle(20, 20, 11)], 1.8);
row(
  `where to measure next, of ${String(spots.length)} spots`,
  timeMs(() => measureNext(fitted, slopesAt(spots), spots)),
  1000,
  'ms',
  'allowed',
);

const n = 150;
const random = generator(3);
const square = new Matrix(Array.from({ length: n }, () => Array.from({ length: n }, () => random.normal())));
const positive = square.mmul(square.transpose()).add(Matrix.eye(n, n).mul(n));
const right = Matrix.columnVector(Array.from({ length: n }, () => random.normal()));
const { factorCholesky, solveLower, solveLowerTransposed } =
  await import('../../shared/terrain/symmetricMatrix.ts');
const flat = Float64Array.from(positive.to1DArray());
row(
  `Cholesky factor and solve, ${n} x ${n}`,
  timeMs(() => {
    const a = flat.slice();
    const b = Float64Array.from(right.to1DArray());
    factorCholesky(a, n, Math.log);
    solveLower(a, n, b);
    solveLowerTransposed(a, n, b);
    return b;
  }, 31),
  timeMs(() => new CholeskyDecomposition(positive).solve(right), 31),
  'ms',
  'ml-matrix',
);

/** Bilinear reading of the same grid: the least any height field costs. */
function bilinear(): (x: number, y: number, out: Float64Array) => void {
  const { heightsM, columns, rows, cellM } = fitted;
  return (x, y, out) => {
    const u = Math.min(Math.max(x / cellM, 0), columns - 1.001);
    const v = Math.min(Math.max(y / cellM, 0), rows - 1.001);
    const i = Math.floor(u);
    const j = Math.floor(v);
    const a = heightsM[j * columns + i] ?? NaN;
    const b = heightsM[j * columns + i + 1] ?? NaN;
    const c = heightsM[(j + 1) * columns + i] ?? NaN;
    const d = heightsM[(j + 1) * columns + i + 1] ?? NaN;
    const s = u - i;
    const t = v - j;
    out[0] = (a * (1 - s) + b * s) * (1 - t) + (c * (1 - s) + d * s) * t;
    out[1] = ((b - a) * (1 - t) + (d - c) * t) / cellM;
    out[2] = ((c - a) * (1 - s) + (d - b) * s) / cellM;
  };
}

const SAMPLES = 2_000_000;
const out = new Float64Array(4);
const along = (sample: (x: number, y: number, into: Float64Array) => void) => (): number => {
  let sum = 0;
  let x = 5;
  let y = 5;
  for (let k = 0; k < SAMPLES; k += 1) {
    // A ball's steps: some centimetres at a time.
    x += 0.013;
    y += 0.007;
    if (x > 35) x = 5;
    if (y > 35) y = 5;
    sample(x, y, out);
    sum += out[0] ?? 0;
  }
  return sum;
};
const perSample = (ms: number): number => (ms * 1e6) / SAMPLES;
const plain = bilinear();
const flatCost = perSample(timeMs(along(plain), 5));
row(
  'height and slope at a point',
  perSample(
    timeMs(
      along((x, y, into) => fitted.sampleHeight(x, y, into)),
      5,
    ),
  ),
  flatCost,
  'ns',
  'bilinear on the same grid',
);
const ground = surveyedGround(fitted, survey);
const place = new Float64Array(2);
row(
  'the same with cover, as the ball meets it',
  perSample(
    timeMs(
      along((x, y, into) => {
        place[0] = x;
        place[1] = y;
        ground.sample(place, into);
      }),
      5,
    ),
  ),
  flatCost,
  'ns',
  'bilinear on the same grid',
);
row(
  'ensemble of 20 surfaces',
  timeMs(() => surfaceEnsemble(fitted, 20, generator(1)), 3),
  20 * timeMs(() => fitSurface(survey), 3),
  'ms',
  '20 fits',
);

for (const { fileName, cells, nodes, seconds, ...rest } of gridImports()) {
  const { progressSteps, silentSeconds, beforeMb, peakMb } = rest;
  row(
    `import of ${fileName}, ${(cells / 1e6).toFixed(1)} million cells, ${(nodes / 1e6).toFixed(1)} million kept`,
    seconds,
    10,
    's',
    'allowed',
  );
  console.log(
    `  progress in ${String(progressSteps)} steps, the first after ${silentSeconds.toFixed(2)} s; ${beforeMb.toFixed(0)} MB before, ${peakMb.toFixed(0)} MB at most`,
  );
}
