import { describe, expect, it } from 'vitest';
import type { Ground } from '../../../shared/ball/ground.ts';
import { generator } from '../../../shared/random/generator.ts';
import { shotSimulator } from '../../../shared/ball/simulator.ts';
import { bunkerDepth } from '../../../shared/terrain/bunkerShape.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import { hermiteGrid } from '../../../shared/terrain/hermiteGrid.ts';
import { flatPolygon } from '../../../shared/terrain/rings.ts';
import { surveyedGround } from '../../../shared/terrain/surveyedGround.ts';
import type { TerrainInput } from '../../../shared/terrain/terrainInput.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';
import { area, circle, emptyInput, heightReadings, swells } from './fixtures.ts';

const input: TerrainInput = {
  ...emptyInput(),
  heights: heightReadings(swells, 40),
  // The bunker bites into the green and is drawn before it.
  areas: [
    area('bunker', circle(29, 20, 4), { lipHeightM: 0.8 }),
    area('green', circle(20, 20, 8)),
    area('fringe', circle(20, 20, 9.5)),
    area('tree', circle(6, 6, 2), { treeHeightM: 9, canopyBaseM: 3 }),
  ],
  walls: [
    {
      id: 'w',
      name: 'stone wall',
      heightM: 1.2,
      points: [
        { eastM: 2, northM: 30 },
        { eastM: 6, northM: 30 },
        { eastM: 6, northM: 34 },
      ],
    },
  ],
};
const surface = fitSurface(input);
const ground = surveyedGround(surface, input);
const at = (eastM: number, northM = 20): { eastM: number; northM: number } => ({ eastM, northM });

describe('cover', () => {
  it('goes by kind and never by the order of drawing', () => {
    const other = surveyedGround(surface, { ...input, areas: input.areas.toReversed() });
    expect(other.cover.codes).toEqual(ground.cover.codes);
    expect([5, 11, 20, 26, 34].map((x) => ground.coverAt(at(x)))).toEqual([
      'lightRough',
      'fringe',
      'green',
      'bunker',
      'lightRough',
    ]);
    expect(ground.coverAt(at(500))).toBe('lightRough');
  });

  it('measures to the edge of the green and along a line onto it', () => {
    expect(ground.greenEdgeDistance(at(20))).toBeCloseTo(8, 1);
    expect(ground.greenEdgeDistance(at(10))).toBeCloseTo(-2, 6);
    expect(ground.greenCrossings(at(0), at(40)).map((c) => [c.enters, Math.round(c.distanceM)])).toEqual([
      [true, 12],
      [false, 28],
    ]);
    expect(ground.distanceOntoGreen(at(0), at(15))).toBeCloseTo(3, 6);
    expect(ground.distanceOntoGreen(at(0), at(10))).toBeCloseTo(-2, 6);
    expect(ground.distanceOntoGreen(at(0), at(0, 10))).toBeNull();
    // Past the back edge it is no way onto the green.
    expect(ground.distanceOntoGreen(at(0), at(33))).toBeNull();
  });
});

describe('a bunker', () => {
  const out = new Float64Array(4);

  it('lies below the surface by its lip, from the foot of its face inwards', () => {
    for (const [x, y] of [
      [29, 20],
      [31, 21],
    ] as const) {
      surface.sampleHeight(x, y, out);
      const over = out[0] ?? NaN;
      ground.sample(Float64Array.of(x, y), out);
      expect(over - (out[0] ?? NaN)).toBeCloseTo(0.8, 9);
      expect(out[3]).toBe(coverCode('bunker'));
    }
  });

  it('is sunk by its own lip however many there are', () => {
    const pot = (k: number) => circle(1.5 + 2 * (k % 20), 1.5 + 2 * Math.floor(k / 20), 0.9, 12);
    const many = Array.from({ length: 300 }, (_, k) =>
      area('bunker', pot(k), { lipHeightM: 0.2 + 0.001 * k }),
    );
    const sandy = surveyedGround(surface, { ...input, areas: many });
    for (const k of [0, 254, 255, 256, 299]) {
      const [x, y] = [1.5 + 2 * (k % 20), 1.5 + 2 * Math.floor(k / 20)];
      surface.sampleHeight(x, y, out);
      expect((out[0] ?? NaN) - sandy.heightAt(at(x, y))).toBeCloseTo(0.2 + 0.001 * k, 9);
    }
  });

  it('has everywhere the depth that its distance from the edge gives, whether a cell was asked before or not', () => {
    const polygon = flatPolygon([circle(29, 20, 4)]);
    const random = generator(9);
    const depth = new Float64Array(3);
    const plain = new Float64Array(4);
    let onFloor = 0;
    for (let k = 0; k < 4000; k += 1) {
      const where = Float64Array.of(25 + 8 * random.uniform(), 16 + 8 * random.uniform());
      ground.sample(where, out);
      if (out[3] !== coverCode('bunker')) continue;
      bunkerDepth(polygon, 0.8, where[0] ?? NaN, where[1] ?? NaN, depth);
      surface.sampleAt(where, plain);
      if (depth[0] === 0.8) onFloor += 1;
      for (const i of [0, 1, 2]) expect(out[i]).toBe((plain[i] ?? NaN) - (depth[i] ?? NaN));
    }
    expect(onFloor).toBeGreaterThan(500);
  });

  it('joins the ground at its edge, with a steep face whose slope is the derivative of its height', () => {
    const step = 1e-6;
    let steepest = 0;
    for (let x = 32; x < 32.98; x += 0.02) {
      ground.sample(Float64Array.of(x + step, 20), out);
      const beyond = out[0] ?? NaN;
      ground.sample(Float64Array.of(x, 20), out);
      expect(out[1]).toBeCloseTo((beyond - (out[0] ?? NaN)) / step, 3);
      steepest = Math.max(steepest, out[1] ?? NaN);
    }
    expect(steepest).toBeGreaterThan(1.5);
    expect(steepest).toBeLessThan(2.2);
    expect(ground.heightAt(at(32.99)) - ground.heightAt(at(33.2))).toBeCloseTo(0, 1);
  });
});

describe('the ball model’s view', () => {
  it('is a Ground whose greatest height holds far and wide', () => {
    const seen: Ground = ground;
    const random = generator(4);
    const out = new Float64Array(4);
    for (let k = 0; k < 5000; k += 1) {
      seen.sample(Float64Array.of(400 * random.uniform() - 180, 400 * random.uniform() - 180), out);
      expect(out[0]).toBeLessThanOrEqual(seen.maxHeightM);
    }
  });

  /** Nodes that say nothing of what rises between them, but by their slopes. */
  const rugged = (height: (k: number) => number, slope: (k: number) => number) => {
    const shape = { originEastM: 0, originNorthM: 0, cellM: 2, columns: 21, rows: 21 };
    const nodes = (value: (k: number) => number): Float64Array =>
      Float64Array.from({ length: 441 }, (_, k) => value(k));
    return hermiteGrid(
      shape,
      nodes(height),
      nodes(slope),
      nodes((k) => slope(k + 500)),
    );
  };

  it('is told no height that the ground exceeds between nodes, beyond an edge or a corner', () => {
    const random = generator(8);
    const values = Float64Array.from({ length: 1000 }, () => random.normal());
    const value = (k: number): number => values[k] ?? 0;
    const wild = surveyedGround(
      rugged(
        (k) => 0.01 * value(k),
        (k) => 0.4 * value(k),
      ),
      emptyInput(),
    );
    const out = new Float64Array(4);
    let top = -Infinity;
    for (let k = 0; k < 40_000; k += 1) {
      const spanM = k % 2 === 0 ? 40 : 400;
      wild.sample(
        Float64Array.of(20 + spanM * (random.uniform() - 0.5), 20 + spanM * (random.uniform() - 0.5)),
        out,
      );
      top = Math.max(top, out[0] ?? NaN);
    }
    expect(top).toBeLessThanOrEqual(wild.maxHeightM);
    expect(wild.maxHeightM).toBeLessThan(Infinity);
  });

  it('lets no ball through a ridge between level nodes', () => {
    // Half a metre high, from 20 to 22 m east: the nodes on either side of it slope up to it.
    const ridge = rugged(
      () => 0,
      (k) => (k >= 500 ? 0 : k % 21 === 10 ? 1 : k % 21 === 11 ? -1 : 0),
    );
    const barred = surveyedGround(ridge, emptyInput());
    expect(barred.heightAt(at(21))).toBeCloseTo(0.5, 9);
    const day = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 0, windFromDeg: 0 } as const;
    const launch = { speedMps: 10.6, elevationDeg: 17, bearingDeg: 90, backspinRpm: 0, spinAxisDeg: 0 };
    // On its way down it would be a hand above the nodes still, beyond the ridge.
    const { landing } = shotSimulator(barred, day, null).trace(16.5, 20, launch).result;
    expect(landing.eastM).toBeGreaterThan(20);
    expect(landing.eastM).toBeLessThan(21);
  });

  it('has crowns and walls over the ground they stand on', () => {
    const [tree, ...walls] = ground.obstacles;
    const under = ground.heightAt(at(6, 6));
    expect(tree?.kind).toBe('tree');
    expect(tree?.bottomM).toBeCloseTo(under + 3, 6);
    expect(tree?.topM).toBeCloseTo(under + 9, 6);
    expect(walls.map((wall) => wall.name)).toEqual(['stone wall', 'stone wall']);
    expect(walls[0]?.topM).toBeGreaterThan(ground.heightAt(at(4, 30)) + 1.1);
    expect(walls[0]?.bottomM).toBeLessThan(ground.heightAt(at(4, 30)));
  });
});
