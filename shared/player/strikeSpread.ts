import type { PlayerLevel } from '../atlas/records.ts';
import type { Cover, LieQuality, Moisture, Technique } from '../words/vocabulary.ts';
import { skillOf } from './skill.ts';

/** Error of a lofted strike, at the club: what the ball does with it is the ball model's affair. */
export interface StrikeSpread {
  /** Standard deviation of clubhead speed as a share of it. */
  readonly speedSd: number;
  readonly lineSdDeg: number;
  readonly loftSdDeg: number;
  /** Shares of shots struck behind the ball and on or above its middle. */
  readonly heavyShare: number;
  readonly thinShare: number;
}

interface Core {
  readonly speedSd: number;
  readonly lineSdDeg: number;
  readonly loftSdDeg: number;
  /** On the shares of bad strikes. */
  readonly contact: number;
}

/**
 * Core spreads of a tour player from a clean fairway lie. The ratios between techniques are assumed (no
 * published breakdown by technique was found): a longer, more lofted or more opened swing errs more. The lie
 * factors below carry the fit.
 */
const CORES: Readonly<Record<Exclude<Technique, 'putt'>, Core>> = {
  bumpAndRun: { speedSd: 0.065, lineSdDeg: 2.2, loftSdDeg: 0.8, contact: 0.6 },
  chip: { speedSd: 0.068, lineSdDeg: 2.3, loftSdDeg: 1.0, contact: 0.8 },
  pitch: { speedSd: 0.07, lineSdDeg: 2.4, loftSdDeg: 1.5, contact: 1 },
  highSoft: { speedSd: 0.095, lineSdDeg: 3.2, loftSdDeg: 2.5, contact: 1.8 },
  splash: { speedSd: 0.1, lineSdDeg: 3, loftSdDeg: 2, contact: 1 },
  explosion: { speedSd: 0.11, lineSdDeg: 3.3, loftSdDeg: 2.2, contact: 1.3 },
};

/**
 * Spread from one cover: `factor` on the core, growing by 1 + `shortM` / distance for shots that are all touch.
 */
export interface CoverSpread {
  readonly factor: number;
  readonly shortM: number;
}

/**
 * Fairway, light rough and bunker are fitted by tests/published/fit/strikeSpread.ts to tour strokes to hole out
 * at 10 to 60 yd (a splash: 10 to 30); the others are placed between and beyond them by judgement.
 */
export const COVER_SPREADS: Readonly<Record<Cover, CoverSpread>> = {
  green: { factor: 0.92, shortM: 7 },
  fringe: { factor: 0.92, shortM: 7 },
  approach: { factor: 0.92, shortM: 7 },
  fairway: { factor: 0.92, shortM: 7 },
  tee: { factor: 0.92, shortM: 7 },
  lightRough: { factor: 1.33, shortM: 7 },
  heavyRough: { factor: 1.92, shortM: 7 },
  bare: { factor: 1.14, shortM: 7 },
  bunker: { factor: 0.62, shortM: 22 },
  path: { factor: 1.5, shortM: 5 },
  penaltyArea: { factor: 2.5, shortM: 5 },
  outOfBounds: { factor: 1, shortM: 5 },
};

/**
 * A strike from sand that meets the ball first: nothing under the ball forgives. The factor is fitted by
 * tests/published/fit/strikeSpread.ts to tour strokes from 40 to 60 yd of sand, the length of touch is the fairway's,
 * and the shares of bad strikes are assumed: a little sand first, which turf would forgive, makes a heavy strike here, so
 * that even the best have some.
 */
export const CLEAN_SAND_SPREAD: CoverSpread = { factor: 1.39, shortM: COVER_SPREADS.fairway.shortM };
const CLEAN_SAND_BAD = { heavyAdded: 0.08, thinAdded: 0.03, factor: 2.5 } as const;

/** Out of sand, whether the club means to meet the ball before the sand. */
export const meetsBallFirst = (technique: Technique): boolean =>
  technique !== 'splash' && technique !== 'explosion';

const LIE_FACTORS: Readonly<Record<LieQuality, readonly [core: number, contact: number]>> = {
  clean: [1, 1],
  sittingUp: [1.05, 0.6],
  sittingDown: [1.3, 1.8],
  buried: [1.4, 1.2],
  divot: [1.25, 2],
};

/** On thin and heavy strikes, by how little grass is under the ball. */
const CONTACT_FACTORS: Partial<Record<Cover, number>> = { bare: 2, path: 2.2, lightRough: 0.8, fringe: 0.9 };

/** Nobody's speed is taken to spread wider than this from a clean lie; a worse one costs even who is as wild as that. */
const WIDEST_SPEED_SD = 0.35;

/** No shot counts as shorter than this when its touch is judged, metres. */
const SHORTEST_M = 3;

/**
 * Spread of a lofted strike meant to go `distanceM`. Putts have `puttingSpread`. What a weaker player's speed loses is in
 * proportion to how hard the lie makes it; on the line what the grass turns comes on top of what the player does, since
 * otherwise a weak player's ball would leave deep grass anywhere (assumed).
 */
export function strikeSpread(
  level: PlayerLevel,
  technique: Exclude<Technique, 'putt'>,
  cover: Cover,
  quality: LieQuality,
  moisture: Moisture,
  distanceM: number,
  known?: CoverSpread,
): StrikeSpread {
  const cleanSand = cover === 'bunker' && meetsBallFirst(technique);
  const fromCover = known ?? (cleanSand ? CLEAN_SAND_SPREAD : COVER_SPREADS[cover]);
  const underBall = cleanSand ? CLEAN_SAND_BAD.factor : (CONTACT_FACTORS[cover] ?? 1);
  const skill = skillOf(level);
  const core = CORES[technique];
  const [lieCore, lieContact] = LIE_FACTORS[quality];
  const touch = 1 + fromCover.shortM / Math.max(SHORTEST_M, distanceM);
  const hard = fromCover.factor * lieCore * touch;
  const contact = core.contact * lieContact * underBall * (moisture === 'wet' ? 1.3 : 1);
  return {
    speedSd: Math.min(WIDEST_SPEED_SD * lieCore, skill.shortGame * hard * core.speedSd),
    lineSdDeg: (skill.shortGame - 1 + hard) * core.lineSdDeg,
    loftSdDeg: Math.min(8, skill.shortGame * lieCore * core.loftSdDeg),
    heavyShare: Math.min(0.35, skill.heavyShare * contact + (cleanSand ? CLEAN_SAND_BAD.heavyAdded : 0)),
    thinShare: Math.min(0.3, skill.thinShare * contact + (cleanSand ? CLEAN_SAND_BAD.thinAdded : 0)),
  };
}
