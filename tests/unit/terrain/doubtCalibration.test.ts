import { describe, expect, it } from 'vitest';
import { pointInPolygon } from '../../../shared/geometry/ring.ts';
import { fitSurface } from '../../../shared/terrain/fitSurface.ts';
import { calibrate, complexes, rms, survey, variation, within } from './calibration.ts';

const surveys = [0, 1].flatMap((seed) => complexes.map((complex) => survey(variation(complex, seed))));

describe('the doubt of ten invented complexes whose true ground is a formula', () => {
  const green = calibrate(surveys, 'green');
  const round = calibrate(surveys, 'round');

  it('is what the errors are, over all the ground', () => {
    for (const quantity of ['height', 'slope'] as const) {
      const all = [...green[quantity].standardised, ...round[quantity].standardised];
      expect(rms(all)).toBeGreaterThan(0.8);
      expect(rms(all)).toBeLessThan(1.25);
      expect(within(all, 1)).toBeGreaterThan(0.65);
      expect(within(all, 1)).toBeLessThan(0.9);
      expect(within(all, 1.96)).toBeGreaterThan(0.9);
    }
  });

  it('errs on the safe side on greens, by less than half, and is not far off on banks', () => {
    for (const quantity of ['height', 'slope'] as const) {
      const onGreen = rms(green[quantity].standardised);
      expect(onGreen).toBeGreaterThan(0.6);
      expect(onGreen).toBeLessThan(1.05);
      expect(rms(round[quantity].standardised)).toBeLessThan(1.35);
    }
    expect(green.slope.statedRms).toBeLessThan(1);
    expect(green.height.statedRms).toBeLessThan(0.02);
  });

  it('leaves readings on greens out and finds them no further off than foretold', () => {
    const z: number[] = [];
    for (const { input, green: polygon } of surveys.slice(0, 3)) {
      const { readings, plate } = fitSurface(input, { cellM: 1 });
      readings.forEach(({ kind, at }, i) => {
        if (kind === 'height' && pointInPolygon(at, polygon)) z.push(plate?.leaveOneOut[i] ?? NaN);
      });
    }
    expect(z.length).toBeGreaterThan(60);
    expect(rms(z)).toBeLessThan(1);
  });
});
