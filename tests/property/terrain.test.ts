import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import { hermiteGrid } from '../../shared/terrain/hermiteGrid.ts';
import type { TerrainInput } from '../../shared/terrain/terrainInput.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

// On a lattice of 2 m, so that no two readings are in one place.
const spot = fc
  .tuple(fc.nat({ max: 400 }), fc.double({ min: -1, max: 1, noNaN: true }))
  .map(([cell, z]): Spot => ({ x: 2 * (cell % 20) + 0.7, y: 2 * Math.floor(cell / 20) + 0.3, z }));
const spots = fc
  .uniqueArray(spot, { minLength: 5, maxLength: 20, selector: (s) => 100 * s.x + s.y })
  // Points all in a row are a case of their own.
  .filter((all) => spread(all) > 2);

/** Variance of the points along the direction in which they vary least. */
function spread(all: readonly Spot[]): number {
  const mean = (of: (s: Spot) => number): number => all.reduce((sum, s) => sum + of(s), 0) / all.length;
  const mx = mean((s) => s.x);
  const my = mean((s) => s.y);
  const xx = mean((s) => (s.x - mx) ** 2);
  const yy = mean((s) => (s.y - my) ** 2);
  const xy = mean((s) => (s.x - mx) * (s.y - my));
  return (xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy);
}

const fixed = { cellM: 2, bendingVariance: 1e-3 };
const inputOf = (all: readonly Spot[]): TerrainInput => ({
  areas: [],
  heights: all.map(({ x, y, z }, i) => ({
    id: `h${i}`,
    at: { eastM: x, northM: y },
    heightM: z,
    accuracyM: 0.01,
  })),
  slopes: [],
  breaklines: [],
  contours: [],
  walls: [],
  extent: { westM: 0, southM: 0, eastM: 40, northM: 40 },
});

describe('a fitted surface', () => {
  it('moves, turns and mirrors with its evidence', () => {
    fc.assert(
      fc.property(
        spots,
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        fc.boolean(),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (all, angle, mirrored, shift) => {
          const turn = (s: Spot): Spot => {
            const x = mirrored ? -s.x : s.x;
            return {
              x: x * Math.cos(angle) - s.y * Math.sin(angle) + shift,
              y: x * Math.sin(angle) + s.y * Math.cos(angle) - shift,
              z: s.z + 3,
            };
          };
          const here = fitSurface(inputOf(all), fixed);
          const there = fitSurface(inputOf(all.map(turn)), fixed);
          for (const at of [
            { x: 20, y: 20, z: 0 },
            { x: 3, y: 35, z: 0 },
          ]) {
            const moved = turn(at);
            expect(there.exactHeight(moved.x, moved.y)).toBeCloseTo(here.exactHeight(at.x, at.y) + 3, 6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is linear in its heights, so a tilt of all of them tilts it and nothing else', () => {
    fc.assert(
      fc.property(spots, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (all, tilt) => {
        const here = fitSurface(inputOf(all), fixed);
        const tilted = fitSurface(inputOf(all.map((s) => ({ ...s, z: s.z + tilt * s.x }))), fixed);
        for (const [x, y] of [
          [20, 20],
          [3, 35],
        ] as const) {
          expect(tilted.exactHeight(x, y)).toBeCloseTo(here.exactHeight(x, y) + tilt * x, 8);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('gives back any plane from heights and slopes together', () => {
    fc.assert(
      fc.property(
        spots,
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        (all, east, north) => {
          const plane = (x: number, y: number): number => 5 + east * x + north * y;
          const input = inputOf(all.map((s) => ({ ...s, z: plane(s.x, s.y) })));
          const slopes = all.slice(0, 3).map((s, i) => ({
            id: `s${i}`,
            at: { eastM: s.y, northM: s.x },
            slopePct: 100 * Math.hypot(east, north),
            downhillBearingDeg: (Math.atan2(-east, -north) * 180) / Math.PI,
            accuracyPct: 0.3,
          }));
          const fitted = fitSurface({ ...input, slopes }, { cellM: 2 });
          const out = new Float64Array(3);
          fitted.sampleHeight(11, 23, out);
          expect(out[0]).toBeCloseTo(plane(11, 23), 9);
          expect(out[1]).toBeCloseTo(east, 9);
          expect(fitted.disagreements).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('does not mind the order of its readings', () => {
    fc.assert(
      fc.property(spots, (all) => {
        const here = fitSurface(inputOf(all), fixed);
        const there = fitSurface(inputOf(all.toReversed()), fixed);
        expect(there.exactHeight(17, 29)).toBeCloseTo(here.exactHeight(17, 29), 8);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the ceiling over a grid', () => {
  it('is nowhere under the ground of its block, nor within a hand’s breadth of it', () => {
    const columns = 14;
    const count = columns * columns;
    // Slopes as steep one way as the other on level nodes: between them the ground bulges as much as it can.
    const bulges = fc.array(fc.constantFrom(-1, 1), { minLength: count, maxLength: count });
    const shape = { originEastM: -2, originNorthM: 5, cellM: 0.5, columns, rows: columns };
    const out = new Float64Array(3);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(0, 0.02), { minLength: count, maxLength: count }),
        bulges,
        bulges,
        (...all) => {
          const [heights, east, north] = all.map((one) => Float64Array.from(one)) as Three;
          const surface = hermiteGrid(shape, heights, east, north);
          const { ceiling } = surface;
          if (ceiling === undefined) throw new Error('a grid has a ceiling');
          const { perM, heightsM } = ceiling;
          const acrossM = ceiling.columns / perM;
          const block = (atM: number): number =>
            Math.floor(Math.min(acrossM - 1e-9, Math.max(0, atM)) * perM);
          for (let x = 0.125; x < acrossM; x += 0.125) {
            for (let y = 0.125; y < acrossM; y += 0.125) {
              surface.sampleHeight(shape.originEastM + x, shape.originNorthM + y, out);
              for (const beside of [-0.1, 0, 0.1])
                if (
                  (heightsM[block(y) * ceiling.columns + block(x + beside)] ?? NaN) <
                  (out[0] ?? NaN) - 1e-9
                )
                  throw new Error(`too low at ${x}, ${y}`);
            }
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});

type Three = [Float64Array, Float64Array, Float64Array];
