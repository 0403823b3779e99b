/**
 * Fits the spread of a strike from fairway, light rough and bunker to tour strokes to hole out, and prints what
 * shared/player/strikeSpread.ts ships. Run with `npx tsx tests/published/fit/strikeSpread.ts`.
 *
 * Two numbers a cover: a factor on the core spreads and a length below which touch adds to them. Gauss-Newton
 * on the six distances (sand: 10 to 30 yd, as far as the sand model carries a ball), by finite differences with
 * the same random numbers throughout.
 */
import type { CoverSpread } from '../../../shared/player/strikeSpread.ts';
import { type BaselineCover, baselineYards, bestLofted, tourBaseline } from './offGreen.ts';

const SHOTS = 600;
const ROUNDS = 6;
/** Always from the same start, so that the shipped numbers come out again. */
const START: Readonly<Record<BaselineCover, CoverSpread>> = {
  fairway: { factor: 1, shortM: 5 },
  lightRough: { factor: 1.3, shortM: 6 },
  bunker: { factor: 0.7, shortM: 18 },
};

function residuals(cover: BaselineCover, spread: CoverSpread): number[] {
  return baselineYards
    .filter((yards) => cover !== 'bunker' || yards <= 30)
    .map(
      (yards, i) =>
        bestLofted(cover, yards, { kind: 'tour' }, SHOTS, spread).option.strokes -
        (tourBaseline[cover][i] ?? 0),
    );
}

const asked = process.argv.slice(2);
for (const cover of ['fairway', 'lightRough', 'bunker'] as const) {
  if (asked.length > 0 && !asked.includes(cover)) continue;
  let spread = START[cover];
  for (let round = 0; round < ROUNDS; round += 1) {
    const here = residuals(cover, spread);
    const byFactor = residuals(cover, { ...spread, factor: spread.factor * 1.1 });
    const byShort = residuals(cover, { ...spread, shortM: spread.shortM + 1 });
    let [aa, ab, bb, ar, br] = [1e-9, 0, 1e-9, 0, 0];
    here.forEach((r, i) => {
      const a = ((byFactor[i] ?? 0) - r) / (0.1 * spread.factor);
      const b = (byShort[i] ?? 0) - r;
      aa += a * a;
      ab += a * b;
      bb += b * b;
      ar += a * r;
      br += b * r;
    });
    const det = aa * bb - ab * ab;
    const factor = spread.factor - 0.8 * ((bb * ar - ab * br) / det);
    const shortM = Math.max(0, spread.shortM - 0.8 * ((aa * br - ab * ar) / det));
    spread = { factor: Math.max(0.3, factor), shortM };
  }
  const left = residuals(cover, spread);
  const rms = Math.sqrt(left.reduce((sum, r) => sum + r * r, 0) / left.length);
  console.log(
    `${cover}: factor ${spread.factor.toFixed(2)}, shortM ${spread.shortM.toFixed(1)}; rms ${rms.toFixed(3)} strokes; ` +
      `residuals ${left.map((r) => r.toFixed(3)).join(' ')}`,
  );
}
