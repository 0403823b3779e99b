import { describe, expect, it } from 'vitest';
import { ALL_STRIKES, CLEAN_DRAWS, FIRST_STRIKES, fewStrikes } from '../../../shared/planner/fewStrikes.ts';
import { flagToolsSteps } from '../../../shared/planner/flagTools.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { CODE } from '../../../shared/planner/shooter.ts';
import { shifted, solveAim } from '../../../shared/planner/solveAim.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';
import { meanStrokes, strokesOf } from '../../../shared/planner/trial.ts';
import { availability } from '../../../shared/player/availability.ts';
import { complexDocument } from './complex.ts';

describe('few strikes for many', () => {
  it('draws speed, line and loft with unit variance, each as good as independent of the others', () => {
    const columns = [0, 1, 2].map((k) => CLEAN_DRAWS.map((row) => row[k] ?? NaN));
    for (const [k, one] of columns.entries()) {
      expect(one.reduce((sum, draw) => sum + draw * draw, 0) / one.length).toBeCloseTo(1, 2);
      for (const other of columns.slice(k + 1))
        expect(Math.abs(one.reduce((sum, draw, i) => sum + draw * (other[i] ?? NaN), 0) / 4)).toBeLessThan(
          0.07,
        );
    }
  });

  it('says what 512 strikes say, better than as many by chance, for a player who mishits some', () => {
    const scene = buildScene(
      complexDocument({ balls: [], player: { level: { kind: 'handicap', handicap: 24 } } }),
      'h1',
    );
    const flag = { eastM: 0, northM: 0 };
    const steps = flagToolsSteps(scene, flag, 'coarse');
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const { field, shooterFrom } = step.value;
    const many = standardShots(512, 3);
    const byChance = [1, 2].map((seed) => standardShots(ALL_STRIKES, seed));
    const off: number[] = [];
    const offByChance: number[] = [];
    for (let i = 0; i < 3; i += 1) {
      const from = shifted(flag, { eastM: 1, northM: 0 }, 13 + 3 * i, 5 * i);
      const distance = Math.hypot(from.eastM, from.northM);
      const bearing = Math.atan2(-from.eastM, -from.northM);
      for (const candidate of availability(scene.player, 'fairway', 'clean', distance).candidates) {
        const shooter = shooterFrom(candidate, from, 'fairway', 'clean', bearing);
        const aim = solveAim(shooter, from, flag, 'rest');
        const mean = (shots: Float64Array): number =>
          meanStrokes(shooter, field, aim, shots, shots.length / DRAWS_PER_SHOT);
        const by = (): ((until: number) => number) =>
          fewStrikes(shooter, aim, () => strokesOf(shooter, field, shooter.out[CODE] ?? 0));
        const strokesBy = by();
        strokesBy(FIRST_STRIKES);
        const few = strokesBy(ALL_STRIKES);
        expect(few).toBe(by()(ALL_STRIKES));
        const right = mean(many);
        off.push(few - right);
        for (const shots of byChance) offByChance.push(mean(shots) - right);
      }
    }
    const size = (misses: readonly number[]): number =>
      Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
    expect(off.length).toBeGreaterThan(25);
    expect(size(off)).toBeLessThan(0.08);
    expect(size(off)).toBeLessThan(0.8 * size(offByChance));
  });
});
