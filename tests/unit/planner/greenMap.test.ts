import { describe, expect, it } from 'vitest';
import { coverTable } from '../../../shared/ball/coverPhysics.ts';
import type { Ground } from '../../../shared/ball/ground.ts';
import { type GreenMap, greenMap } from '../../../shared/planner/greenMap.ts';
import { puttLines } from '../../../shared/planner/puttLines.ts';
import { puttRoller, ROLL_HOLED } from '../../../shared/planner/puttRoller.ts';
import { DRAWS_PER_SHOT, standardShots } from '../../../shared/planner/standardShots.ts';
import { PUTT_PAST_M, puttingErrors, puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from '../../published/fit/puttingGround.ts';

const flag = { eastM: 0, northM: 0 };
const mapOf = (ground: Ground): GreenMap =>
  greenMap({
    ground,
    roller: puttRoller(ground, levelDay, flag),
    flag,
    conditions: levelDay,
    level: { kind: 'tour' },
    puttsPerNode: 24,
  });

describe('the map of a green', () => {
  const ground = tiltedGround(2.5);
  const map = mapOf(ground);
  const roller = puttRoller(ground, levelDay, flag);

  it('means putts that drop, from every side', () => {
    for (let ring = 4; ring < 18; ring += 3) {
      for (let spoke = 0; spoke < map.spokes; spoke += 1) {
        const node = ring * map.spokes + spoke;
        const angle = (2 * Math.PI * spoke) / map.spokes;
        const radius = map.radiiM[ring] ?? 0;
        const end = roller.roll(
          radius * Math.sin(angle),
          radius * Math.cos(angle),
          map.speedsMps[node] ?? 0,
          map.bearings[node] ?? 0,
        );
        expect({ ring, spoke, code: end.code }).toEqual({ ring, spoke, code: ROLL_HOLED });
      }
    }
  });

  // On the fall line they agree to 0.2 points; across it the curve of the last half metre costs up to 3.
  it('gives the chances that simulation gives', () => {
    const shots = standardShots(4096, 9);
    const { rollingMps2 } = coverTable(levelDay);
    const lines = puttLines(ground, flag, map.radiiM, PUTT_PAST_M, rollingMps2, 360);
    const meant = new Float64Array(3);
    for (const [ring, spoke] of [
      [8, 0],
      [10, 8],
      [12, 16],
      [14, 20],
    ] as const) {
      const node = ring * map.spokes + spoke;
      const angle = (2 * Math.PI * spoke) / map.spokes;
      const radius = map.radiiM[ring] ?? 0;
      lines.at(ring, angle, meant);
      const spread = puttingSpread(puttingErrors({ kind: 'tour' }), {
        distanceM: radius,
        startMps: meant[0] ?? 0,
        holeMps: meant[2] ?? 0,
        rollingMps2: rollingMps2[0] ?? 0,
      });
      let holed = 0;
      for (let i = 0; i < 4096; i += 1) {
        const end = roller.roll(
          radius * Math.sin(angle),
          radius * Math.cos(angle),
          (map.speedsMps[node] ?? 0) * (1 + spread.speedSd * (shots[i * DRAWS_PER_SHOT] ?? 0)),
          (map.bearings[node] ?? 0) +
            ((spread.lineSdDeg * Math.PI) / 180) * (shots[i * DRAWS_PER_SHOT + 1] ?? 0),
        );
        if (end.code === ROLL_HOLED) holed += 1;
      }
      expect(Math.abs(holed / 4096 - (map.makes[node] ?? 0))).toBeLessThan(spoke % 16 === 0 ? 0.005 : 0.03);
    }
  });

  it('is even across the fall line, dearest from above, and dearer with distance', () => {
    for (const radius of [1, 3, 9]) {
      expect(map.strokesAt(radius, 0.3 * radius)).toBeCloseTo(map.strokesAt(-radius, 0.3 * radius), 2);
      expect(map.strokesAt(0, radius)).toBeGreaterThan(map.strokesAt(0, -radius));
      expect(map.strokesAt(radius, 0)).toBeGreaterThan(map.strokesAt(0, -radius));
    }
    const along = [0.5, 1, 2, 4, 8, 16].map((radius) => map.strokesAt(0, -radius));
    expect([...along].sort((a, b) => a - b)).toEqual(along);
    expect(map.strokesAt(0, 0)).toBe(1);
  });
});
