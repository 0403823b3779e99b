import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene } from '../../shared/planner/scene.ts';
import { lieQualities } from '../../shared/words/vocabulary.ts';
import { complexDocument } from '../unit/planner/complex.ts';

describe('every plan', () => {
  it('is finite and consistent, whatever the ground, the lie and the player', () => {
    fc.assert(
      fc.property(
        fc.record({
          slopeEast: fc.double({ min: -0.06, max: 0.06, noNaN: true }),
          slopeNorth: fc.double({ min: -0.06, max: 0.06, noNaN: true }),
          bend: fc.double({ min: -0.002, max: 0.002, noNaN: true }),
          angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
          distance: fc.double({ min: 0.1, max: 30, noNaN: true }),
          lie: fc.constantFrom(...lieQualities),
          surround: fc.constantFrom('fairway', 'lightRough', 'heavyRough', 'penaltyArea', 'bare'),
          handicap: fc.integer({ min: 0, max: 36 }),
          seed: fc.integer({ min: 0, max: 1e9 }),
        }),
        (c) => {
          const document = complexDocument({
            heightM: (e, n) => c.slopeEast * e + c.slopeNorth * n + c.bend * e * n,
            surround: c.surround,
            balls: [
              { id: 'b', at: [c.distance * Math.sin(c.angle), c.distance * Math.cos(c.angle)], lie: c.lie },
            ],
            player: { level: { kind: 'handicap', handicap: c.handicap } },
          });
          const plan = planBall(buildScene(document, 'h1'), {
            ballId: 'b',
            flagId: 'A',
            shotsPerOption: 40,
            seed: c.seed,
          });
          const ids = plan.options.map((option) => option.id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(ids).toContain(plan.chosenId);
          for (const option of plan.options) {
            expect(option.costStrokes).toBeGreaterThanOrEqual(0);
            expect(option.strokes).toBeGreaterThanOrEqual(1);
            expect(option.strokes).toBeLessThan(20);
            for (const share of Object.values(option.chances)) {
              expect(share).toBeGreaterThanOrEqual(0);
              expect(share).toBeLessThanOrEqual(1);
            }
            for (const value of [
              option.carryM,
              option.runM,
              option.apexM,
              option.aimRightM,
              option.leave.q90M,
            ]) {
              expect(Number.isFinite(value)).toBe(true);
            }
            expect(option.leave.q25M).toBeLessThanOrEqual(option.leave.q90M);
            expect(option.ellipse50.semiMajorM).toBeLessThanOrEqual(option.ellipse90.semiMajorM);
          }
        },
      ),
      { numRuns: 10 },
    );
  });
});
