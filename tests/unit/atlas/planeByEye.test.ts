import { describe, expect, it } from 'vitest';
import { parsePlaneByEye } from '../../../shared/atlas/planeByEye.ts';

describe('a plane by eye', () => {
  it.each([
    ['2 % back to front', 0, 2, 180],
    ['2% front to back', 90, 2, 90],
    ['1.5 % left to right', 350, 1.5, 80],
    ['1 deg right to left', 0, 1.7455, 270],
    ['3 back left to front right', 10, 3, 145],
    ['level', 20, 0, 200],
  ])('%s, playing on %i', (typed, play, slopePct, bearing) => {
    const found = parsePlaneByEye(typed, play, 'green');
    expect(found.slopePct).toBeCloseTo(slopePct, 3);
    expect(found.downhillBearingDeg).toBeCloseTo(bearing, 9);
    expect(found.accuracyPct).toBe(Math.max(1, slopePct / 2));
  });

  it.each(['steep', '2 %', 'back to front', 'x back to front'])(
    '"%s" is refused with an example',
    (typed) => {
      expect(() => parsePlaneByEye(typed, 0, 'green')).toThrow(/green: .*cannot be read.*(2 %|such as)/);
    },
  );
});
