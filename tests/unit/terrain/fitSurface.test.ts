import { describe, expect, it } from 'vitest';
import { generator } from '../../../shared/random/generator.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import type { Surface } from '../../../shared/terrain/surface.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { area, circle, emptyInput, heightReadings, rmsOver, slopeReadings, swells } from './fixtures.ts';

const out = new Float64Array(3);
const heightOf = (surface: Surface, eastM: number, northM: number): number => {
  surface.sampleHeight(eastM, northM, out);
  return out[0] ?? NaN;
};

describe('what the surface is fitted to', () => {
  it('passes within accuracy of every reading that the others bear out', () => {
    const input = { ...emptyInput(), heights: heightReadings(swells, 60), slopes: slopeReadings(swells, 10) };
    const fitted = fitSurface(input);
    expect(fitted.readings).toHaveLength(70);
    expect(fitted.disagreements).toEqual([]);
    for (const height of input.heights) {
      const off = heightOf(fitted, height.at.eastM, height.at.northM) - height.heightM;
      expect(Math.abs(off)).toBeLessThan(height.accuracyM);
    }
    expect(rmsOver((x, y) => heightOf(fitted, x, y) - swells(x, y))).toBeLessThan(0.02);
  });

  it('names the reading that contradicts the others and says by how much', () => {
    const good = heightReadings(swells, 60);
    const heights = good.map((h, i) => (i === 17 ? { ...h, heightM: h.heightM + 1 } : h));
    const fitted = fitSurface({ ...emptyInput(), heights });
    const worst = fitted.disagreements.filter((r) => r.verdict === 'contradicts');
    expect(worst.map((r) => r.id)).toEqual(['h17']);
    // The others put the ground about 1 m below it.
    expect(worst[0]?.othersDiffer).toBeCloseTo(-1, 0);
  });

  it('lets slope readings bend the ground between heights', () => {
    const heights = heightReadings(swells, 25);
    const without = fitSurface({ ...emptyInput(), heights });
    const withSlopes = fitSurface({ ...emptyInput(), heights, slopes: slopeReadings(swells, 25) });
    const error = (surface: Surface): number => rmsOver((x, y) => heightOf(surface, x, y) - swells(x, y));
    expect(error(withSlopes)).toBeLessThan(0.85 * error(without));
  });

  it('keeps a bank sharp between two break lines', () => {
    const bank = (x: number): number => Math.min(0.6, Math.max(0, 0.15 * (x - 18)));
    const heights = heightReadings(bank, 70, generator(5));
    const line = (id: string, x: number): { id: string; points: { eastM: number; northM: number }[] } => ({
      id,
      points: [
        { eastM: x, northM: -1 },
        { eastM: x, northM: 41 },
      ],
    });
    const smooth = fitSurface({ ...emptyInput(), heights });
    const hinged = fitSurface({ ...emptyInput(), heights, breaklines: [line('foot', 18), line('top', 22)] });
    const error = (surface: Surface): number => rmsOver((x, y) => heightOf(surface, x, y) - bank(x));
    expect(error(hinged)).toBeLessThan(error(smooth) / 4);
  });

  it('takes thousands of heights by averaging those that lie together', () => {
    const heights = heightReadings(swells, 4000, generator(6), 0.01);
    const fitted = fitSurface({ ...emptyInput(), heights });
    expect(fitted.readings.length).toBeLessThanOrEqual(500);
    expect(rmsOver((x, y) => heightOf(fitted, x, y) - swells(x, y))).toBeLessThan(0.006);
  });

  it('follows contours', () => {
    const contours = [0.2, 0.4, 0.6].map((heightM) => ({
      id: `c${heightM}`,
      heightM,
      points: [
        { eastM: 50 * heightM, northM: 0 },
        { eastM: 50 * heightM, northM: 40 },
      ],
    }));
    const fitted = fitSurface({ ...emptyInput(), contours });
    expect(heightOf(fitted, 15, 20)).toBeCloseTo(0.3, 6);
  });

  it('takes a height read on the sand as the floor of the bunker', () => {
    const plane = (x: number): number => 0.01 * x;
    const heights = heightReadings(plane, 20);
    const bunker = area('bunker', circle(20, 20, 5), { lipHeightM: 0.8 });
    const onSand = { id: 'sand', at: { eastM: 20, northM: 20 }, heightM: 0.2 - 0.8, accuracyM: 0.01 };
    const fitted = fitSurface({ ...emptyInput(), areas: [bunker], heights: [...heights, onSand] });
    expect(fitted.disagreements).toEqual([]);
    expect(heightOf(fitted, 20, 20)).toBeCloseTo(0.2, 6);
  });
});

describe('little evidence', () => {
  const at = (eastM: number, northM: number, heightM: number): ReturnType<typeof heightReadings>[number] => ({
    id: `${eastM},${northM}`,
    at: { eastM, northM },
    heightM,
    accuracyM: 0.01,
  });

  it('is level through one height and a plane through two', () => {
    const one = fitSurface({ ...emptyInput(), heights: [at(10, 10, 1.5)] });
    expect(heightOf(one, 33, 2)).toBeCloseTo(1.5, 12);
    const two = fitSurface({ ...emptyInput(), heights: [at(10, 10, 1), at(20, 20, 1.4)] });
    expect(heightOf(two, 30, 30)).toBeCloseTo(1.8, 9);
    expect(heightOf(two, 30, 10)).toBeCloseTo(1.4, 9); // level across the line that joins them
  });

  it('makes a plane from slope readings alone, with height 0 at their middle', () => {
    const slope = { accuracyPct: 0.2, slopePct: 2, downhillBearingDeg: 180 };
    const slopes = [
      { id: 'a', at: { eastM: 10, northM: 10 }, ...slope },
      { id: 'b', at: { eastM: 30, northM: 30 }, ...slope },
    ];
    const fitted = fitSurface({ ...emptyInput(), slopes });
    expect(heightOf(fitted, 20, 20)).toBeCloseTo(0, 9);
    expect(heightOf(fitted, 20, 30)).toBeCloseTo(0.2, 9);
  });

  it('refuses a green without any, unless asked for level ground', () => {
    const input = { ...emptyInput(), areas: [area('green', circle(20, 20, 8))] };
    const fit = (): unknown => fitSurface(input);
    expect(fit).toThrow(InputProblem);
    expect(fit).toThrow(/the green/);
    const level = fitSurface(input, { flatWithoutEvidence: true });
    expect(heightOf(level, 12, 30)).toBe(0);
  });

  it('refuses values that are no numbers, naming the reading', () => {
    const fit = (): unknown => fitSurface({ ...emptyInput(), heights: [at(1, 1, NaN)] });
    expect(fit).toThrow(/spot height "1,1"/);
  });
});

describe('reading the fitted surface', () => {
  const fitted = fitSurface({
    ...emptyInput(),
    heights: heightReadings(swells, 60, generator(9), 0.01),
    slopes: slopeReadings(swells, 10),
  });

  it('gives slopes that are the derivatives of its heights, on the grid and beyond', () => {
    const random = generator(11);
    const step = 1e-5;
    for (let k = 0; k < 500; k += 1) {
      const x = 80 * random.uniform() - 20;
      const y = 80 * random.uniform() - 20;
      const east = (heightOf(fitted, x + step, y) - heightOf(fitted, x - step, y)) / (2 * step);
      const north = (heightOf(fitted, x, y + step) - heightOf(fitted, x, y - step)) / (2 * step);
      heightOf(fitted, x, y);
      expect(out[1]).toBeCloseTo(east, 6);
      expect(out[2]).toBeCloseTo(north, 6);
    }
  });

  it('stays within a tenth of a millimetre of the closed form', () => {
    const random = generator(12);
    for (let k = 0; k < 300; k += 1) {
      const x = 40 * random.uniform();
      const y = 40 * random.uniform();
      expect(Math.abs(heightOf(fitted, x, y) - fitted.exactHeight(x, y))).toBeLessThan(1e-4);
    }
  });

  it('stays gentle however far away', () => {
    for (const far of [100, 1000, 1e6]) {
      expect(Math.abs(heightOf(fitted, far, -far))).toBeLessThan(10);
      expect(Math.hypot(out[1] ?? NaN, out[2] ?? NaN)).toBeLessThan(0.1);
    }
  });
});
