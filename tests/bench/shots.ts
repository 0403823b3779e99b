/**
 * Full shots a second on fitted ground, strike to rest, and the ratio against the same physics stepped by a general
 * solver (odex: extrapolation with dense output, after Hairer & Wanner) whose tolerance is set so that its finishes are
 * no more accurate than ours. Both are the best of rounds that last about a second together, of one run. Run with
 * `npx tsx tests/bench/asShipped.ts shots`.
 */
import { createRequire } from 'node:module';
import {
  aerodynamicAcceleration,
  airConstants,
  MOTION_SIZE,
  SPIN,
  SPIN_DECAY_PER_M,
  standardAir,
} from '../../shared/ball/aerodynamics.ts';
import { bounce, VX, VY, VZ } from '../../shared/ball/bounce.ts';
import { BALL_RADIUS_M, GRAVITY_MPS2, ROLLING_SHARE } from '../../shared/ball/constants.ts';
import { coverTable } from '../../shared/ball/coverPhysics.ts';
import { shotSimulator, type ShotSimulator } from '../../shared/ball/simulator.ts';
import { SLOT_COUNT, slots } from '../../shared/ball/slots.ts';
import { strikeSolver } from '../../shared/ball/strikeVectors.ts';
import { generator } from '../../shared/random/generator.ts';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import { surveyedGround } from '../../shared/terrain/surveyedGround.ts';
import { area, circle, emptyInput, heightReadings, slopeReadings, swells } from '../unit/terrain/fixtures.ts';

type Derivative = (t: number, y: number[]) => number[];
type AfterStep = (
  n: number,
  t0: number,
  t1: number,
  y: number[],
  dense: (component: number, t: number) => number,
) => boolean | undefined;
interface GeneralSolver {
  relativeTolerance: number;
  absoluteTolerance: number;
  denseOutput: boolean;
  solve(f: Derivative, t0: number, y0: number[], t1: number, after: AfterStep): { y: number[] };
}
// The package carries no type declarations that our settings accept: this is what is used of it.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => GeneralSolver };

const at = (values: ArrayLike<number>, i: number): number => values[i] ?? NaN;

const survey = {
  ...emptyInput(),
  heights: heightReadings(swells, 60),
  slopes: slopeReadings(swells, 20),
  areas: [
    area('fairway', circle(20, 12, 30)),
    area('fringe', circle(20, 26, 10.8)),
    area('green', circle(20, 26, 10)),
  ],
};
const ground = surveyedGround(fitSurface(survey), survey);
const day = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 2, windFromDeg: 40 } as const;
const start = { eastM: 20, northM: 8 };

/** Launches of three clubs with a player's spread, six numbers each. */
function launches(count: number): Float64Array[] {
  const random = generator(3);
  const lie = { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0 } as const;
  const solvers = [36, 46, 56].map((loftDeg) =>
    strikeSolver(
      {
        clubKind: 'lofted',
        loftDeg,
        bounceDeg: 8,
        leanDeg: 5,
        attackDeg: -4,
        faceOpenDeg: 0,
        clubheadMps: 8,
        bearingDeg: 0,
        handed: 'right',
      },
      lie,
      day,
    ),
  );
  return Array.from({ length: count }, (_, i) => {
    const out = new Float64Array(6);
    const speed = [6, 8, 11.5][i % 3] ?? 8;
    solvers[i % 3]?.vectors(
      speed * (1 + 0.06 * random.normal()),
      0.05 * random.normal(),
      random.normal(),
      random.normal(),
      0,
      out,
    );
    return out;
  });
}

/** The same shot by the general solver: flight, the same bounces, slide, roll. Returns where it ends. */
function generalShot(launch: Float64Array, tolerance: number): [eastM: number, northM: number] {
  const table = coverTable(day);
  const towards = ((day.windFromDeg + 180) * Math.PI) / 180;
  const air = airConstants({
    ...standardAir,
    windEastMps: day.windMps * Math.sin(towards),
    windNorthMps: day.windMps * Math.cos(towards),
  });
  const g = new Float64Array(4);
  const a = new Float64Array(3);
  const motion = new Float64Array(MOTION_SIZE);
  const solver = (size: number): GeneralSolver => {
    const s = new Solver(size);
    s.relativeTolerance = tolerance;
    s.absoluteTolerance = tolerance;
    s.denseOutput = true;
    return s;
  };
  const under = (x: number, y: number): Float64Array => {
    ground.sample(Float64Array.of(x, y), g);
    return g;
  };
  /** Runs until `passed` of the state first turns true, and bisects to it. */
  const until = (f: Derivative, y0: number[], end: number, passed: (y: number[]) => boolean): number[] => {
    const found: number[][] = [];
    const last = solver(y0.length).solve(f, 0, y0, end, (n, t0, t1, y, dense) => {
      if (n === 1 || !passed(y)) return undefined;
      let low = t0;
      let high = t1;
      for (let k = 0; k < 30; k += 1) {
        const t = (low + high) / 2;
        const trial = y0.map((_, i) => dense(i, t));
        if (passed(trial)) {
          high = t;
          found.push(trial);
        } else low = t;
      }
      if (found.length === 0) found.push(y);
      return false;
    });
    return found.at(-1) ?? last.y;
  };
  const flight: Derivative = (_, y) => {
    for (let i = 0; i < 6; i += 1) motion[i] = at(y, i + 3);
    motion[SPIN] = Math.sqrt(at(y, 6) ** 2 + at(y, 7) ** 2 + at(y, 8) ** 2);
    aerodynamicAcceleration(air, motion, a);
    const speed = Math.sqrt(at(y, 3) ** 2 + at(y, 4) ** 2 + at(y, 5) ** 2);
    const decay = -SPIN_DECAY_PER_M * speed;
    return [
      at(y, 3),
      at(y, 4),
      at(y, 5),
      at(a, 0),
      at(a, 1),
      at(a, 2) - GRAVITY_MPS2,
      decay * at(y, 6),
      decay * at(y, 7),
      decay * at(y, 8),
    ];
  };
  let y = [start.eastM, start.northM, at(under(start.eastM, start.northM), 0), ...launch];
  for (let hop = 0; hop < 40; hop += 1) {
    under(at(y, 0), at(y, 1));
    if (at(y, VZ) - at(g, 1) * at(y, VX) - at(g, 2) * at(y, VY) <= 0.015) break;
    y = until(flight, y, 10, (s) => at(s, 2) < at(under(at(s, 0), at(s, 1)), 0));
    under(at(y, 0), at(y, 1));
    const state = Float64Array.from(y);
    bounce(state, g, table);
    y = [...state];
    y[2] = at(g, 0);
  }
  const slide: Derivative = (_, s) => {
    under(at(s, 0), at(s, 1));
    const slip = Math.max(1e-6, Math.sqrt(at(s, 4) ** 2 + at(s, 5) ** 2));
    const grip = Math.max(at(table.friction, at(g, 3)) * GRAVITY_MPS2, at(table.rollingMps2, at(g, 3)));
    const rubX = (grip * at(s, 4)) / slip;
    const rubY = (grip * at(s, 5)) / slip;
    const px = GRAVITY_MPS2 * at(g, 1);
    const py = GRAVITY_MPS2 * at(g, 2);
    return [at(s, 2), at(s, 3), -rubX - px, -rubY - py, -3.5 * rubX - px, -3.5 * rubY - py];
  };
  const slipX = at(y, 3) - BALL_RADIUS_M * at(y, 7);
  const slipY = at(y, 4) + BALL_RADIUS_M * at(y, 6);
  const slid = until(
    slide,
    [at(y, 0), at(y, 1), at(y, 3), at(y, 4), slipX, slipY],
    5,
    (s) => at(s, 4) * slipX + at(s, 5) * slipY <= 0.005 * Math.sqrt(slipX * slipX + slipY * slipY),
  );
  const rolling: Derivative = (_, s) => {
    under(at(s, 0), at(s, 1));
    const f = at(table.rollingMps2, at(g, 3)) / Math.max(1e-6, Math.sqrt(at(s, 2) ** 2 + at(s, 3) ** 2));
    const pull = ROLLING_SHARE * GRAVITY_MPS2;
    return [at(s, 2), at(s, 3), -f * at(s, 2) - pull * at(g, 1), -f * at(s, 3) - pull * at(g, 2)];
  };
  const rest = until(rolling, slid.slice(0, 4), 60, (s) => at(s, 2) ** 2 + at(s, 3) ** 2 < 0.02 ** 2);
  return [at(rest, 0), at(rest, 1)];
}

const median = (values: number[]): number =>
  at(
    [...values].sort((p, q) => p - q),
    Math.floor(values.length / 2),
  );
const out = new Float64Array(SLOT_COUNT);
const finish = (simulator: ShotSimulator, launch: Float64Array): [number, number] => {
  simulator.run(start.eastM, start.northM, launch, out);
  return [at(out, slots.restEastM), at(out, slots.restNorthM)];
};

const sample = launches(3000);
const few = sample.slice(0, 150);
const ours = shotSimulator(ground, day, { eastM: 21, northM: 27 });
const oursFree = shotSimulator(ground, day, null);
const fine = shotSimulator(ground, day, null, { stepFactor: 1 / 50 });
const truth = few.map((one) => finish(fine, one));
const missMm = (ends: [number, number][]): number =>
  median(ends.map(([x, y], i) => 1000 * Math.hypot(x - (truth[i]?.[0] ?? NaN), y - (truth[i]?.[1] ?? NaN))));

const ROUNDS = 60;
// As the planner does it: one launch at a time, in the same array.
const flat = Float64Array.from(sample.flatMap((launch) => [...launch]));
const launch = new Float64Array(6);
let best = Infinity;
for (let round = 0; round < ROUNDS; round += 1) {
  const from = performance.now();
  for (let i = 0; i < sample.length; i += 1) {
    for (let k = 0; k < 6; k += 1) launch[k] = flat[6 * i + k] ?? NaN;
    ours.run(start.eastM, start.northM, launch, out);
  }
  best = Math.min(best, (performance.now() - from) / sample.length);
}
console.log(
  `shots: ${(1000 / best).toFixed(0)} a second, ${(1000 * best).toFixed(2)} microseconds each (best of ${String(ROUNDS)} rounds of ${String(sample.length)})`,
);
console.log(
  `median distance from the reference: ours ${missMm(few.map((one) => finish(oursFree, one))).toFixed(2)} mm`,
);
for (const tolerance of [1e-3, 1e-4, 1e-5]) {
  const ends = few.map((one) => generalShot(one, tolerance));
  let each = Infinity;
  for (let round = 0; round < 12; round += 1) {
    const from = performance.now();
    for (const one of few) generalShot(one, tolerance);
    each = Math.min(each, (performance.now() - from) / few.length);
  }
  console.log(
    `general solver at ${String(tolerance)}: median ${missMm(ends).toFixed(2)} mm, ${(1000 * each).toFixed(0)} microseconds each, ratio ${(each / best).toFixed(0)}`,
  );
}
