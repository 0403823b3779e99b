import { coverTable } from '../../../shared/ball/coverPhysics.ts';
import { makeChance } from '../../../shared/planner/makeChance.ts';
import { puttLines } from '../../../shared/planner/puttLines.ts';
import { PUTT_PAST_M, type PuttingErrors, puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from './puttingGround.ts';

/**
 * Chance that a putt drops on a plane at stimp 10, started `bearingDeg` round from straight above the hole: 0 runs down
 * the fall line, 90 across it, 180 up.
 */
export function slopeChance(
  errors: PuttingErrors,
  slopePct: number,
  lengthM: number,
  bearingDeg: number,
): number {
  const ground = tiltedGround(slopePct);
  const { rollingMps2 } = coverTable(levelDay);
  const hole = { eastM: 0, northM: 0 };
  const angle = (bearingDeg * Math.PI) / 180;
  const meant = new Float64Array(3);
  puttLines(ground, hole, Float64Array.of(lengthM), PUTT_PAST_M, rollingMps2, 360).at(0, angle, meant);
  const [startMps = 0, bearing = 0, holeMps = 0] = meant;
  const { lineSdDeg, speedSd } = puttingSpread(errors, {
    distanceM: lengthM,
    startMps,
    holeMps,
    rollingMps2: rollingMps2[0] ?? 0,
  });
  return makeChance(ground, rollingMps2, hole, {
    from: { eastM: lengthM * Math.sin(angle), northM: lengthM * Math.cos(angle) },
    speedMps: startMps,
    bearing,
    speedSd,
    lineSd: (lineSdDeg * Math.PI) / 180,
  });
}
