import { describe, expect, it } from 'vitest';
import { SLOPE_PULL_MPS2 } from '../../../shared/ball/constants.ts';
import { rollingFromStimp } from '../../../shared/ball/coverPhysics.ts';
import { inclinedPlane } from '../../../shared/ball/inclinedPlane.ts';
import type { Conditions } from '../../../shared/ball/shot.ts';
import { shotSimulator } from '../../../shared/ball/simulator.ts';

const day: Conditions = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 0, windFromDeg: 0 };
const level = inclinedPlane(0, 0, 'green');

describe('the hole', () => {
  it('takes a ball that flies straight in, and not one that lands a hand away', () => {
    const launch = { speedMps: 9, elevationDeg: 60, bearingDeg: 0, backspinRpm: 2000, spinAxisDeg: 0 };
    const { landing } = shotSimulator(level, day, null).trace(0, 0, launch).result;
    const at = (eastM: number, northM: number) =>
      shotSimulator(level, day, { eastM, northM }).trace(0, 0, launch).result;
    expect(at(landing.eastM, landing.northM).outcome).toBe('holed');
    expect(at(landing.eastM + 0.02, landing.northM - 0.02).outcome).toBe('holed');
    expect(at(landing.eastM + 0.1, landing.northM).outcome).toBe('atRest');
  });

  it('holds more with the flagstick in: a fast ball dead at it drops, off its side comes back or turns away', () => {
    const fast = (flagstickIn: boolean, offM: number) =>
      shotSimulator(level, day, { eastM: offM, northM: 2, flagstickIn }).traceRoll(0, 0, 3.2, 0).result;
    expect(fast(false, 0).outcome).toBe('atRest');
    expect(fast(true, 0).outcome).toBe('holed');
    const tooFast = shotSimulator(level, day, { eastM: 0, northM: 2, flagstickIn: true }).traceRoll(
      0,
      0,
      6,
      0,
    );
    expect(tooFast.result.outcome).toBe('atRest');
    expect(tooFast.result.rest.northM).toBeLessThan(2);
  });
});

describe('grain', () => {
  const leaning = (towardsDeg: number) => ({
    eastShare: 0.1 * Math.sin((towardsDeg * Math.PI) / 180),
    northShare: 0.1 * Math.cos((towardsDeg * Math.PI) / 180),
  });
  const end = (towardsDeg: number | null, bearingDeg = 0) =>
    shotSimulator(
      towardsDeg === null ? level : { ...level, grain: leaning(towardsDeg) },
      day,
      null,
    ).traceRoll(0, 0, 2, bearingDeg).result.totalM;

  it('lengthens a putt with it by its share, shortens one against it, and turns one across it its way', () => {
    expect(end(0)).toBeCloseTo(end(null) / 0.9, 6);
    expect(end(180)).toBeCloseTo(end(null) / 1.1, 6);
    expect(end(45, 45)).toBeCloseTo(end(0, 0), 6);
    const grained = shotSimulator({ ...level, grain: leaning(90) }, day, null);
    const across = grained.traceRoll(0, 0, 2, 0).result.rest;
    // The same as ground that falls that way by a tenth of what the level green brakes.
    const fallPct = (10 * rollingFromStimp(day.stimpFt)) / SLOPE_PULL_MPS2;
    const tilted = shotSimulator(inclinedPlane(fallPct, 90, 'green'), day, null).traceRoll(0, 0, 2, 0).result
      .rest;
    expect(across.eastM).toBeGreaterThan(0.1);
    expect(across.eastM).toBeCloseTo(tilted.eastM, 9);
    expect(across.northM).toBeCloseTo(tilted.northM, 9);
  });
});
