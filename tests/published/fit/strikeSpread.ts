/**
 * Fits the spread of a strike from fairway, light rough and bunker to tour strokes to hole out, and prints what
 * shared/player/strikeSpread.ts ships. Run with `npx tsx tests/published/fit/strikeSpread.ts`.
 *
 * Two numbers a cover: a factor on the core spreads and a length below which touch adds to them. From sand the splash is
 * fitted at 10 to 30 yd, as far as a full swing carries a ball on the cushion of sand, and the strike that meets the ball
 * first at 40 to 60, in its factor alone, with the fairway's length of touch. Gauss-Newton by finite differences with the same
 * random numbers throughout. The two numbers make up for each other (on the fairway 0.92 with 7.0 m misses as little as 0.90
 * with 7.4), so that the length is rounded to metres before the factor is settled with it.
 *
 * Ends with the constants beside those that ship, and fails where one does not round to it. Names of fits as arguments run
 * those alone.
 */
import {
  CLEAN_SAND_SPREAD,
  COVER_SPREADS,
  type CoverSpread,
  meetsBallFirst,
} from '../../../shared/player/strikeSpread.ts';
import { type BaselineCover, baselineYards, bestLofted, tourBaseline, type Trial } from './offGreen.ts';
import { compareWithShipped, type FittedConstant } from './shippedTable.ts';

const SHOTS = 2048;
const ROUNDS = 8;
const ROUNDS_OF_BOTH = 5;

interface Fit {
  readonly name: string;
  readonly cover: BaselineCover;
  readonly fromYd: number;
  readonly toYd: number;
  readonly plays: Trial['plays'];
  /** Always from the same start, so that the shipped numbers come out again. */
  readonly start: CoverSpread;
  readonly shipped: CoverSpread;
  readonly factorAlone?: true;
}

const any = (): boolean => true;
const fits: readonly Fit[] = [
  {
    name: 'fairway',
    cover: 'fairway',
    fromYd: 10,
    toYd: 60,
    plays: any,
    start: { factor: 1, shortM: 5 },
    shipped: COVER_SPREADS.fairway,
  },
  {
    name: 'lightRough',
    cover: 'lightRough',
    fromYd: 10,
    toYd: 60,
    plays: any,
    start: { factor: 1.3, shortM: 6 },
    shipped: COVER_SPREADS.lightRough,
  },
  {
    name: 'bunker',
    cover: 'bunker',
    fromYd: 10,
    toYd: 30,
    plays: (technique) => !meetsBallFirst(technique),
    start: { factor: 0.7, shortM: 18 },
    shipped: COVER_SPREADS.bunker,
  },
  {
    name: 'cleanSand',
    cover: 'bunker',
    fromYd: 40,
    toYd: 60,
    plays: meetsBallFirst,
    start: { factor: 1.5, shortM: COVER_SPREADS.fairway.shortM },
    shipped: CLEAN_SAND_SPREAD,
    factorAlone: true,
  },
];

function residuals(fit: Fit, spread: CoverSpread): number[] {
  return baselineYards.flatMap((yards, i) => {
    if (yards < fit.fromYd || yards > fit.toYd) return [];
    const { option } = bestLofted(fit.cover, yards, { kind: 'tour' }, SHOTS, { spread, plays: fit.plays });
    return [option.strokes - (tourBaseline[fit.cover][i] ?? 0)];
  });
}

const asked = process.argv.slice(2);
const constants: FittedConstant[] = [];
for (const fit of fits) {
  if (asked.length > 0 && !asked.includes(fit.name)) continue;
  let spread = fit.start;
  for (let round = 0; round < ROUNDS; round += 1) {
    const factorAlone = fit.factorAlone === true || round >= ROUNDS_OF_BOTH;
    if (factorAlone) spread = { ...spread, shortM: Math.round(spread.shortM) };
    const here = residuals(fit, spread);
    const byFactor = residuals(fit, { ...spread, factor: spread.factor * 1.1 });
    const byShort = factorAlone ? here : residuals(fit, { ...spread, shortM: spread.shortM + 1 });
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
  const left = residuals(fit, spread);
  const rms = Math.sqrt(left.reduce((sum, r) => sum + r * r, 0) / left.length);
  console.log(
    `${fit.name}: factor ${spread.factor.toFixed(2)}, shortM ${spread.shortM.toFixed(1)}; rms ${rms.toFixed(3)} strokes; ` +
      `residuals ${left.map((r) => r.toFixed(3)).join(' ')}`,
  );
  const { name, shipped } = fit;
  constants.push({ name: `${name}, factor`, shipped: shipped.factor, fitted: spread.factor, decimals: 2 });
  if (fit.factorAlone !== true)
    constants.push({ name: `${name}, shortM`, shipped: shipped.shortM, fitted: spread.shortM, decimals: 0 });
}
compareWithShipped(constants);
