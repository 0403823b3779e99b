import { describe, expect, it } from 'vitest';
import { standardAir } from '../../../shared/ball/aerodynamics.ts';
import { airOf } from '../../../shared/ball/air.ts';
import { CAPTURED, captureReachM, CENTRED_CAPTURE_MPS, meetHole } from '../../../shared/ball/capture.ts';
import { HOLE_RADIUS_M, SLOPE_PULL_MPS2 } from '../../../shared/ball/constants.ts';
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
      shotSimulator(level, { ...day, flagstickIn }, { eastM: offM, northM: 2 }).traceRoll(0, 0, 3.2, 0)
        .result;
    expect(fast(false, 0).outcome).toBe('atRest');
    expect(fast(true, 0).outcome).toBe('holed');
    const met = (offM: number, speedMps: number) =>
      shotSimulator(level, { ...day, flagstickIn: true }, { eastM: offM, northM: 2 }).traceRoll(
        0,
        0,
        speedMps,
        0,
      ).result;
    const tooFast = met(0, 6);
    expect(tooFast.outcome).toBe('atRest');
    expect(tooFast.rest.northM).toBeLessThan(2);
    // Met on its side the stick takes little pace, and turns the ball away from it.
    const grazed = met(0.02, 3.2);
    expect(grazed.outcome).toBe('atRest');
    expect(grazed.rest.eastM).toBeLessThan(-0.2);
  });
});

describe('what a hole takes', () => {
  it.each([false, true])('is as wide as its reach says at every pace, flagstick in: %s', (flagstickIn) => {
    for (let speedMps = 0.2; speedMps < 5; speedMps += 0.2) {
      const reachM = captureReachM(speedMps, CENTRED_CAPTURE_MPS, flagstickIn);
      for (let offM = 0.0002; offM < HOLE_RADIUS_M; offM += 0.0005) {
        const drops = meetHole(Float64Array.of(0, speedMps), offM, flagstickIn) === CAPTURED;
        expect({ speedMps, offM, drops }).toEqual({ speedMps, offM, drops: offM <= reachM });
      }
    }
  });
});

describe('air', () => {
  it('is standard air to the last bit where nothing is said, and very nearly where that is what is said', () => {
    expect(airOf({})).toBe(standardAir);
    const said = airOf({ heightAboveSeaM: 0, temperatureC: 15 });
    expect(said.densityKgM3).toBeCloseTo(1.225, 5);
    expect(said.viscosityM2s).toBeCloseTo(standardAir.viscosityM2s, 7);
    expect(airOf({ heightAboveSeaM: 1000 })).toEqual(airOf({ heightAboveSeaM: 1000, temperatureC: 8.5 }));
  });

  it('lets a full iron carry farther the higher and the warmer it is', () => {
    const launch = { speedMps: 54, elevationDeg: 16, bearingDeg: 0, backspinRpm: 7000, spinAxisDeg: 0 };
    const carry = (air: Partial<Conditions>): number =>
      shotSimulator(level, { ...day, ...air }, null).trace(0, 0, launch).result.carryM;
    expect(carry({ heightAboveSeaM: 1600 })).toBeGreaterThan(1.05 * carry({}));
    expect(carry({ temperatureC: 35 })).toBeGreaterThan(1.02 * carry({ temperatureC: 5 }));
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
