/**
 * Fits the line error of a tour putt, at 1 ft and its growth, to one-putt percentages on a level green at stimp
 * 10, with the speed error and the pace past the hole held at what three-putts ask for. Prints what
 * shared/player/puttingSpread.ts ships. Run with `npx tsx tests/published/fit/putting.ts`.
 */
import { coverTable } from '../../../shared/ball/coverPhysics.ts';
import { makeChance } from '../../../shared/planner/makeChance.ts';
import { puttingSpread } from '../../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from './puttingGround.ts';
import { TOUR_PUTTS } from './tourPutts.ts';

const FOOT_M = 0.3048;
const ground = tiltedGround(0);
const { rollingMps2 } = coverTable(levelDay);
const { speedSd, pastM } = puttingSpread({ kind: 'tour' }, 1);

function madePct(feet: number, lineDeg: number, growthDeg: number): number {
  const lengthM = feet * FOOT_M;
  return (
    100 *
    makeChance(
      ground,
      rollingMps2,
      { eastM: 0, northM: 0 },
      {
        from: { eastM: 0, northM: -lengthM },
        speedMps: Math.sqrt(2 * (rollingMps2[0] ?? 0.55) * (lengthM + pastM)),
        bearing: 0,
        speedSd,
        lineSd: ((lineDeg + (growthDeg * feet) / 100) * Math.PI) / 180,
      },
    )
  );
}

let lineDeg = 1.29;
let growthDeg = 0.4;
for (let round = 0; round < 8; round += 1) {
  let [aa, ab, bb, ar, br] = [0, 0, 1e-9, 0, 0];
  for (const [feet, pct] of TOUR_PUTTS) {
    const here = madePct(feet, lineDeg, growthDeg);
    const a = (madePct(feet, lineDeg + 0.01, growthDeg) - here) / 0.01;
    const b = (madePct(feet, lineDeg, growthDeg + 0.05) - here) / 0.05;
    const r = here - pct;
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ar += a * r;
    br += b * r;
  }
  const det = aa * bb - ab * ab;
  lineDeg -= (bb * ar - ab * br) / det;
  growthDeg -= (aa * br - ab * ar) / det;
}
console.log(`line ${lineDeg.toFixed(3)} deg + ${growthDeg.toFixed(2)} deg per 100 ft`);
for (const [feet, pct] of TOUR_PUTTS) {
  console.log(
    `${String(feet)} ft: ${String(pct)} %, fitted ${madePct(feet, lineDeg, growthDeg).toFixed(1)} %`,
  );
}
