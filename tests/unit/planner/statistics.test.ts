import { describe, expect, it } from 'vitest';
import { quantileOfSorted, shareEllipses } from '../../../shared/planner/statistics.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';

describe('statistics of finishes', () => {
  const count = 2048;
  const shots = standardShots(count, 5);

  it('draws standard normals and uniforms, every prefix evenly spread', () => {
    for (const prefix of [64, 512, count]) {
      for (let d = 0; d < DRAWS_PER_SHOT; d += 1) {
        const values = Array.from({ length: prefix }, (_, i) => shots[i * DRAWS_PER_SHOT + d] ?? 0);
        const mean = values.reduce((a, b) => a + b, 0) / prefix;
        const variance = values.reduce((a, b) => a + (b - mean) ** 2, 0) / prefix;
        expect(Math.abs(mean - (d === 3 ? 0.5 : 0))).toBeLessThan(2 / prefix ** 0.8);
        expect(Math.abs(variance - (d === 3 ? 1 / 12 : 1))).toBeLessThan(8 / prefix ** 0.8);
      }
    }
  });

  it('finds the ellipse of a tilted cloud and holds the shares asked for', () => {
    const points = new Float64Array(2 * count);
    const turn = Math.PI / 6; // major axis 30 degrees east of north
    for (let i = 0; i < count; i += 1) {
      const along = 3 * (shots[i * DRAWS_PER_SHOT] ?? 0);
      const across = shots[i * DRAWS_PER_SHOT + 1] ?? 0;
      points[2 * i] = 5 + along * Math.sin(turn) + across * Math.cos(turn);
      points[2 * i + 1] = -2 + along * Math.cos(turn) - across * Math.sin(turn);
    }
    const [half, most] = shareEllipses(points, [0.5, 0.9]);
    expect(half?.bearingDeg).toBeCloseTo(30, -0.3);
    expect(half?.centre.eastM).toBeCloseTo(5, 0);
    // 50 and 90 % of a plane normal lie within 1.177 and 2.146 deviations.
    expect(half?.semiMajorM).toBeCloseTo(3 * 1.177, 0);
    expect(most?.semiMajorM).toBeCloseTo(3 * 2.146, 0);
    expect(most?.semiMinorM).toBeCloseTo(2.146, 0);
  });

  it('interpolates quantiles', () => {
    expect(quantileOfSorted(Float64Array.of(1, 2, 3, 5), 0.5)).toBe(2.5);
    expect(quantileOfSorted(Float64Array.of(7), 0.9)).toBe(7);
    expect(quantileOfSorted(new Float64Array(0), 0.5)).toBeNaN();
  });
});
