import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ground, Obstacle } from '../../../shared/ball/ground.ts';
import { inclinedPlane } from '../../../shared/ball/inclinedPlane.ts';
import type { Conditions } from '../../../shared/ball/shot.ts';
import { shotSimulator } from '../../../shared/ball/simulator.ts';

const day: Conditions = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 0, windFromDeg: 0 };

/** A wall 0.3 m thick and 1 m high across the line, its near side 3 m off. */
const wall: Obstacle = {
  kind: 'wall',
  name: 'garden wall',
  ringM: Float64Array.of(-20, 3, 20, 3, 20, 3.3, -20, 3.3),
  bottomM: -0.5,
  topM: 1,
};
const hedge: Obstacle = { ...wall, kind: 'tree', name: 'hedge', bottomM: 0 };

const on = (obstacle: Obstacle, slopePct = 0, downhillBearingDeg = 0): Ground => ({
  ...inclinedPlane(slopePct, downhillBearingDeg, 'green'),
  maxHeightM: Infinity,
  obstacles: [obstacle],
});

describe('a ball on the ground', () => {
  it('comes back off a wall that it rolls into, and loses most of its pace', () => {
    const free = shotSimulator(inclinedPlane(0, 0, 'green'), day, null).traceRoll(0, 0, 3, 0).result;
    expect(free.rest.northM).toBeGreaterThan(8);
    const met = shotSimulator(on(wall), day, null).traceRoll(0, 0, 3, 0).result;
    expect(met.struckObstacle).toBe(true);
    expect(met.rest.northM).toBeLessThan(3);
    expect(met.rest.northM).toBeGreaterThan(1.5);
  });

  it('runs on along a wall that it meets at an angle', () => {
    const met = shotSimulator(on(wall), day, null).traceRoll(0, 0, 3, 60).result;
    expect(met.rest.eastM).toBeGreaterThan(5.5);
    expect(met.rest.northM).toBeLessThan(3);
  });

  it('lies against a wall at the foot of a slope that holds no ball', () => {
    const met = shotSimulator(on(wall, 15, 0), day, null).traceRoll(0, 0, 1, 0).result;
    expect(met.outcome).toBe('atRest');
    expect(met.rest.northM).toBeCloseTo(3, 1);
  });

  it('is caught by a hedge, and rolls under a crown that is clear of the ground', () => {
    expect(shotSimulator(on(hedge), day, null).traceRoll(0, 0, 3, 0).result.rest.northM).toBeLessThan(3.4);
    const crown = { ...hedge, bottomM: 2, topM: 8 };
    const under = shotSimulator(on(crown), day, null).traceRoll(0, 0, 3, 0).result;
    expect(under.struckObstacle).toBe(false);
    expect(under.rest.northM).toBeGreaterThan(8);
  });
});

describe('a ball in the air', () => {
  it('never goes through a thin wall, however fast and at whatever angle', () => {
    const simulator = shotSimulator(on({ ...wall, topM: 60 }), day, null);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 45, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: -70, max: 70, noNaN: true }),
        (speedMps, elevationDeg, bearingDeg) => {
          const { rest } = simulator.trace(0, 0, {
            speedMps,
            elevationDeg,
            bearingDeg,
            backspinRpm: 2000,
            spinAxisDeg: 0,
          }).result;
          // The ends of the wall are 20 m to either side.
          expect(rest.northM < 3.001 || Math.abs(rest.eastM) > 19).toBe(true);
        },
      ),
      { numRuns: 200, seed: 21 },
    );
  });

  it('clears a wall that is low enough', () => {
    const shot = { speedMps: 12, elevationDeg: 45, bearingDeg: 0, backspinRpm: 3000, spinAxisDeg: 0 };
    const over = shotSimulator(on(wall), day, null).trace(0, 0, shot).result;
    expect(over.struckObstacle).toBe(false);
    expect(over.carryM).toBeGreaterThan(10);
  });
});
