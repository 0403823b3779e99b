import { describe, expect, it } from 'vitest';
import { generator } from '../../../shared/random/generator.ts';
import {
  doubtAt,
  doubtGrid,
  doubtScaleAt,
  heightTarget,
  slopeTarget,
  variance,
} from '../../../shared/terrain/confidence.ts';
import type { DoubtScale } from '../../../shared/terrain/doubtScale.ts';
import { LEVEL_LENGTH_M } from '../../../shared/terrain/evidence.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import { measureNext, slopesAt } from '../../../shared/terrain/measureNext.ts';
import { surfaceEnsemble } from '../../../shared/terrain/surfaceEnsemble.ts';
import { surveyedGround } from '../../../shared/terrain/surveyedGround.ts';
import type { PlanePoint } from '../../../shared/geometry/points.ts';
import { distanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';
import { complexes, survey } from './calibration.ts';
import { emptyInput, heightReadings, slopeReadings, swells } from './fixtures.ts';

const input = { ...emptyInput(), heights: heightReadings(swells, 40, generator(3), 0.01) };
const fitted = fitSurface(input, { cellM: 0.5 });
const out = new Float64Array(3);

describe('doubt', () => {
  it('is no more than a reading’s accuracy on it and grows away from the evidence', () => {
    for (const { at } of input.heights.slice(0, 10)) {
      expect(doubtAt(fitted, at).heightSdM).toBeLessThan(0.01);
    }
    const middle = doubtAt(fitted, { eastM: 20, northM: 20 }).heightSdM;
    const outside = doubtAt(fitted, { eastM: -15, northM: 20 }).heightSdM;
    const far = doubtAt(fitted, { eastM: -40, northM: 20 }).heightSdM;
    expect(middle).toBeLessThan(outside);
    expect(outside).toBeLessThan(far);
  });

  it('covers the truth: errors over their stated deviations have a spread of at most one', () => {
    const random = generator(8);
    let sum = 0;
    for (let k = 0; k < 400; k += 1) {
      const at = { eastM: 2 + 36 * random.uniform(), northM: 2 + 36 * random.uniform() };
      fitted.sampleHeight(at.eastM, at.northM, out);
      const z = ((out[0] ?? NaN) - swells(at.eastM, at.northM)) / doubtAt(fitted, at).heightSdM;
      sum += z * z;
    }
    expect(Math.sqrt(sum / 400)).toBeGreaterThan(0.3);
    expect(Math.sqrt(sum / 400)).toBeLessThan(1.2);
  });

  it('shrinks where a slope was read', () => {
    const slopes = slopeReadings(swells, 1).map((s) => ({ ...s, at: { eastM: 20, northM: 20 } }));
    const better = fitSurface(
      { ...input, slopes },
      { bendingVariance: fitted.plate?.bendingVariance ?? NaN },
    );
    const at = { eastM: 20, northM: 20 };
    const overLevel = ({ plate }: typeof fitted): number =>
      plate === null ? NaN : 100 * Math.sqrt(variance(plate, slopeTarget(plate, at, 'east', LEVEL_LENGTH_M)));
    // The level's own accuracy is 0.2 % over its length; over a pace a little more stays open.
    expect(overLevel(better)).toBeLessThan(0.21);
    expect(overLevel(fitted)).toBeGreaterThan(0.3);
    // A reading that surprises also makes the ground look rougher; of equal roughness, it leaves less open.
    const asRough = {
      ...better,
      doubtScale: (...place: Parameters<DoubtScale>) => fitted.doubtScale(...place),
    };
    expect(doubtAt(asRough, at).slopeSdPct).toBeLessThan(doubtAt(fitted, at).slopeSdPct);
  });

  it('never rises where a reading confirms the ground', () => {
    const ratios: number[] = [];
    for (const complex of complexes.slice(0, 1)) {
      const { input: surveyed, green } = survey(complex);
      const before = fitSurface(surveyed, { cellM: 4 });
      const random = generator(17);
      const { westM, eastM, southM, northM } = surveyed.extent;
      for (let tried = 0; tried < 5;) {
        const at = {
          eastM: westM + random.uniform() * (eastM - westM),
          northM: southM + random.uniform() * (northM - southM),
        };
        const nearest = Math.min(...surveyed.heights.map((reading) => distanceM(reading.at, at)));
        // Two readings a stride apart say little of the slope between them: each may be a centimetre out.
        if (!pointInPolygon(at, green) || nearest < 1.4) continue;
        tried += 1;
        const heightM = before.exactHeight(at.eastM, at.northM);
        const after = fitSurface(
          { ...surveyed, heights: [...surveyed.heights, { id: 'new', at, heightM, accuracyM: 0.01 }] },
          { cellM: 4 },
        );
        expect(doubtAt(after, at).heightSdM).toBeLessThan(doubtAt(before, at).heightSdM);
        ratios.push(doubtAt(after, at).slopeSdPct / doubtAt(before, at).slopeSdPct);
      }
    }
    expect(Math.max(...ratios)).toBeLessThan(1.02);
  });

  it('fills a grid with the same numbers', () => {
    const shape = { originEastM: 10, originNorthM: 12, cellM: 5, columns: 3, rows: 2 };
    const grid = doubtGrid(fitted, shape);
    expect(grid.heightSdM[4]).toBe(doubtAt(fitted, { eastM: 15, northM: 17 }).heightSdM);
    expect(grid.slopeSdPct).toHaveLength(6);
  });
});

describe('surfaces that agree with the evidence', () => {
  const members = surfaceEnsemble(fitted, 80, generator(21));

  it('spread as the doubt says, about the fit', () => {
    for (const [x, y] of [
      [20, 20],
      [6, 33],
      [31, 9],
      [1, 1],
    ] as const) {
      fitted.sampleHeight(x, y, out);
      const fit = out[0] ?? NaN;
      let sum = 0;
      let squares = 0;
      for (const member of members) {
        member.sampleHeight(x, y, out);
        sum += (out[0] ?? NaN) - fit;
        squares += ((out[0] ?? NaN) - fit) ** 2;
      }
      const { heightSdM } = doubtAt(fitted, { eastM: x, northM: y });
      expect(Math.abs(sum / 80)).toBeLessThan((3.5 * heightSdM) / Math.sqrt(80));
      // A chi-square on 80 draws, three and a half of its deviations either way.
      expect(Math.sqrt(squares / 80) / heightSdM).toBeGreaterThan(0.72);
      expect(Math.sqrt(squares / 80) / heightSdM).toBeLessThan(1.28);
    }
  });

  it('carry a ball like the fitted one', () => {
    const [member] = members;
    if (member === undefined) throw new Error('no member');
    const ground = surveyedGround(member, input);
    member.sampleHeight(12, 27, out);
    expect(ground.heightAt({ eastM: 12, northM: 27 })).toBe(out[0]);
  });

  it('come out the same from the same seed', () => {
    const [again] = surfaceEnsemble(fitted, 1, generator(21));
    expect(again?.heightsM).toEqual(members[0]?.heightsM);
    expect(members[1]?.heightsM).not.toEqual(members[0]?.heightsM);
  });
});

describe('where to measure next', () => {
  const places = Array.from({ length: 144 }, (_, i) => ({
    eastM: 9 + 2 * (i % 12),
    northM: 9 + 2 * Math.floor(i / 12),
  }));

  const scaleAt = (at: PlanePoint): number =>
    fitted.plate === null ? NaN : doubtScaleAt(fitted, fitted.plate, at);
  /** Every other of them each way. */
  const felt = places.filter((_, i) => i % 2 === 0 && Math.floor(i / 12) % 2 === 0);
  const heightsAt = places.map((at) => ({ at, weight: 1, terms: [at.eastM, at.northM, 1] }));

  it('foretells exactly how much a reading takes off', () => {
    const [first] = measureNext(fitted, heightsAt, places, { accuracyM: 0.005 });
    const total = (surface: typeof fitted): number =>
      places.reduce((sum, at) => {
        const scale = scaleAt(at);
        const { plate } = surface;
        return plate === null ? NaN : sum + scale * scale * variance(plate, heightTarget(plate, at));
      }, 0);
    const at = first?.at ?? { eastM: NaN, northM: NaN };
    const accuracyM = 0.005 / scaleAt(at);
    const reading = { id: 'new', at, heightM: swells(at.eastM, at.northM), accuracyM };
    const after = fitSurface(
      { ...input, heights: [...input.heights, reading] },
      { bendingVariance: fitted.plate?.bendingVariance ?? NaN },
    );
    expect(1 - total(after) / total(fitted)).toBeCloseTo(first?.reduction ?? NaN, 6);
  });

  it('helps more than a reading anywhere else, in the doubt and in the true error of slopes', () => {
    const sums = { chosenDoubt: 0, otherDoubt: 0, chosenError: 0, otherError: 0 };
    for (let seed = 1; seed <= 12; seed += 1) {
      const random = generator(50 + seed);
      const heights = heightReadings(swells, 30, generator(seed), 0.01);
      const before = fitSurface({ ...emptyInput(), heights }, { cellM: 4 });
      const withReading = (at: (typeof places)[number]): readonly [doubt: number, error: number] => {
        const heightM = swells(at.eastM, at.northM) + 0.01 * random.normal();
        const reading = { id: 'new', at, heightM, accuracyM: 0.01 };
        const after = fitSurface({ ...emptyInput(), heights: [...heights, reading] }, { cellM: 4 });
        const off = (x: number, y: number): number => after.exactHeight(x, y) - swells(x, y);
        return felt.reduce(
          ([doubt, error], { eastM: x, northM: y }) => [
            doubt + doubtAt(after, { eastM: x, northM: y }).slopeSdPct ** 2,
            error + (off(x + 0.5, y) - off(x - 0.5, y)) ** 2 + (off(x, y + 0.5) - off(x, y - 0.5)) ** 2,
          ],
          [0, 0],
        );
      };
      const [first] = measureNext(before, slopesAt(felt), places, { count: 1 });
      const other = places[Math.floor(places.length * random.uniform())];
      if (first === undefined || other === undefined) throw new Error('no spot');
      const [chosenDoubt, chosenError] = withReading(first.at);
      const [otherDoubt, otherError] = withReading(other);
      sums.chosenDoubt += chosenDoubt;
      sums.otherDoubt += otherDoubt;
      sums.chosenError += chosenError;
      sums.otherError += otherError;
    }
    expect(sums.chosenDoubt).toBeLessThan(sums.otherDoubt);
    expect(sums.chosenError).toBeLessThan(0.9 * sums.otherError);
  });

  it('goes where it matters and never twice to one', () => {
    const everywhere = measureNext(fitted, slopesAt(places), places);
    expect(new Set(everywhere.map((s) => `${s.at.eastM},${s.at.northM}`)).size).toBe(3);
    expect(everywhere[0]?.reduction).toBeGreaterThanOrEqual(everywhere[1]?.reduction ?? NaN);
    const eastern = slopesAt(places.filter(({ eastM }) => eastM > 28));
    expect(measureNext(fitted, eastern, places, { count: 1 })[0]?.at.eastM).toBeGreaterThan(24);
  });
});
