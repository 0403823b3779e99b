import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../../shared/terrain/evidence.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import { slopeAt } from '../../../shared/terrain/slope.ts';
import { area, circle, emptyInput, heightReadings, swells } from './fixtures.ts';

type Height = (x: number, y: number) => number;
const nodes = (height: Height, stepM: number) =>
  Array.from({ length: Math.round(40 / stepM) ** 2 }, (_, i) => {
    const side = Math.round(40 / stepM);
    const at = { eastM: (i % side) * stepM, northM: Math.floor(i / side) * stepM };
    return { at, heightM: height(at.eastM, at.northM) };
  });

describe('grids and planes by eye as evidence', () => {
  it('a grid alone gives back a plane, and ground of swells to a few centimetres', () => {
    const plane: Height = (x, y) => 5 + 0.03 * x - 0.02 * y;
    for (const [height, tolerance] of [
      [plane, 1e-6],
      [swells, 0.03],
    ] as const) {
      const grids = [{ id: 'g', nodes: nodes(height, 0.5), accuracyM: 0.02 }];
      const fit = fitSurface({ ...emptyInput(), grids });
      for (const [x, y] of [
        [10, 12],
        [21, 33],
        [30, 7],
      ] as const)
        expect(Math.abs(fit.exactHeight(x, y) - height(x, y))).toBeLessThan(tolerance);
    }
  });

  it('is thinned apart from spot heights, which keep their own say', () => {
    const input = {
      ...emptyInput(),
      heights: heightReadings(swells, 60),
      grids: [{ id: 'g', nodes: nodes((x, y) => swells(x, y) + 0.05, 0.5), accuracyM: 0.1 }],
    };
    const { readings } = evidenceOf(input);
    expect(readings.filter(({ kind }) => kind === 'height')).toHaveLength(60);
    const kept = readings.filter(({ kind }) => kind === 'grid').length;
    expect(kept).toBeGreaterThan(100);
    expect(kept).toBeLessThanOrEqual(180);
    const fit = fitSurface(input);
    const misses = input.heights.map(({ at, heightM }) =>
      Math.abs(fit.exactHeight(at.eastM, at.northM) - heightM),
    );
    // The grid is 5 cm high and ten times worse: the spot heights decide.
    expect(misses.sort((a, b) => a - b)[30]).toBeLessThan(0.01);
  });

  it('keeps most of its nodes about the green', () => {
    const green = area('green', circle(20, 20, 8));
    const grids = [{ id: 'g', nodes: nodes(swells, 0.5), accuracyM: 0.1 }];
    const { readings } = evidenceOf({ ...emptyInput(), areas: [green], grids });
    const near = readings.filter(({ at }) => Math.hypot(at.eastM - 20, at.northM - 20) < 11.5);
    expect(readings.length).toBeLessThanOrEqual(240);
    expect(near.length).toBeGreaterThan(0.5 * readings.length);
  });

  it('a plane by eye tilts ground that has one height, and gives way to readings', () => {
    const eye = {
      id: 'e',
      at: { eastM: 20, northM: 20 },
      reachM: 10,
      slopePct: 2,
      downhillBearingDeg: 180,
      accuracyPct: 1,
    };
    const heights = [{ id: 'h', at: { eastM: 20, northM: 20 }, heightM: 7, accuracyM: 0.01 }];
    const alone = fitSurface({ ...emptyInput(), heights, planes: [eye] });
    expect(alone.exactHeight(20, 30) - alone.exactHeight(20, 10)).toBeCloseTo(0.4, 3);
    const plane: Height = (x) => 7 + 0.03 * (x - 20);
    const measured = fitSurface({ ...emptyInput(), heights: heightReadings(plane, 40), planes: [eye] });
    const slope = slopeAt(measured, { eastM: 20, northM: 20 });
    expect(slope.slopePct).toBeCloseTo(3, 1);
    expect(measured.readings.find(({ kind }) => kind === 'plane')?.unit).toBe('pct');
  });
});
