import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ground, Obstacle } from '../../../shared/ball/ground.ts';
import { inclinedPlane } from '../../../shared/ball/inclinedPlane.ts';
import type { Conditions } from '../../../shared/ball/shot.ts';
import { shotSimulator } from '../../../shared/ball/simulator.ts';
import { SLOT_COUNT, slots } from '../../../shared/ball/slots.ts';
import { strikeSolver } from '../../../shared/ball/strikeVectors.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';
import { strikeSpread } from '../../../shared/player/strikeSpread.ts';

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

  /** A crown 6 m across, its near side 6 m off, clear of the ground from 2.5 m up to 6 m. */
  const crown: Obstacle = {
    kind: 'tree',
    name: 'tree',
    ringM: Float64Array.of(-3, 6, 3, 6, 3, 12, -3, 12),
    bottomM: 2.5,
    topM: 6,
  };
  const flown = (ground: Ground, elevationDeg: number, speedMps: number, eastM = 0) =>
    shotSimulator(ground, day, null).trace(eastM, 0, {
      speedMps,
      elevationDeg,
      bearingDeg: 0,
      backspinRpm: 2000,
      spinAxisDeg: 0,
    }).result;
  const free = inclinedPlane(0, 0, 'green');

  it('goes under a crown and over it as if none were there', () => {
    for (const [elevationDeg, speedMps] of [
      [15, 14],
      [64, 15.5],
    ] as const) {
      const met = flown(on(crown), elevationDeg, speedMps);
      const alone = flown(free, elevationDeg, speedMps);
      expect(met.struckObstacle).toBe(false);
      expect(met.apexM > 6).toBe(elevationDeg > 45);
      // Shorter steps beside the tree move the end by less than the steps' own error.
      expect(Math.abs(met.totalM - alone.totalM)).toBeLessThan(0.005);
    }
  });

  it('is dropped by the middle of a crown, slowed by its edge, and stopped at once by a bush', () => {
    const alone = flown(free, 38, 13).totalM;
    const middle = flown(on(crown), 38, 13);
    expect(middle.struckObstacle).toBe(true);
    expect(middle.totalM).toBeGreaterThan(6);
    expect(middle.totalM).toBeLessThan(9);
    // Through a corner of the crown: the longer the way inside, the more is lost.
    const corner: Obstacle = { ...crown, ringM: Float64Array.of(-3, 6, 3, 12, -3, 12) };
    const through = [-2.6, -2, -1, 1, 2, 2.8].map((eastM) => flown(on(corner), 25, 16, eastM).totalM);
    expect([...through].sort((a, b) => a - b)).toEqual(through);
    expect(flown(on(corner), 38, 13, 4).totalM).toBeCloseTo(alone, 2);
    expect(flown(on({ ...crown, bottomM: 0 }), 20, 16).totalM).toBeLessThan(6.5);
  });

  it('gets by a tree with a chance that is the spread’s, the less the deeper the crown hangs', () => {
    const strike = {
      clubKind: 'lofted',
      loftDeg: 46,
      bounceDeg: 8,
      leanDeg: 5,
      attackDeg: -4,
      faceOpenDeg: 0,
      clubheadMps: 12,
      bearingDeg: 0,
      handed: 'right',
    } as const;
    const solver = strikeSolver(
      strike,
      { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0 },
      day,
    );
    const { speedSd, loftSdDeg } = strikeSpread(
      { kind: 'handicap', handicap: 18 },
      'pitch',
      'fairway',
      'clean',
      'dry',
      18,
    );
    const shots = standardShots(400, 5);
    const launch = new Float64Array(6);
    const out = new Float64Array(SLOT_COUNT);
    const shares = [5, 3, 2.6, 2.2, 1.4].map((bottomM) => {
      const simulator = shotSimulator(on({ ...crown, bottomM, topM: 12 }), day, null);
      let struck = 0;
      for (let i = 0; i < 400; i += 1) {
        const at = i * DRAWS_PER_SHOT;
        solver.vectors(
          12 * (1 + speedSd * (shots[at] ?? 0)),
          0,
          0,
          loftSdDeg * (shots[at + 2] ?? 0),
          0,
          launch,
        );
        simulator.run(0, 0, launch, out);
        struck += out[slots.obstructed] ?? NaN;
      }
      return struck / 400;
    });
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares[0]).toBe(0);
    expect(shares.slice(1, 4).some((share) => share > 0.1 && share < 0.9)).toBe(true);
    expect(shares.at(-1)).toBeGreaterThan(0.7);
  });
});
