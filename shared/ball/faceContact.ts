import type { Cover, LieQuality, Moisture } from '../words/vocabulary.ts';
import type { Conditions, Lie } from './shot.ts';

/** What the lie leaves of a strike. */
export interface FaceContact {
  /** Sliding friction between face and ball. */
  readonly friction: number;
  /** Share of the clubhead speed that reaches the ball. */
  readonly speedShare: number;
  /** Added to the loft at impact, degrees. */
  readonly loftDeg: number;
}

/** Friction of a dry, a damp and a wet face; the last also with grass between (assumed within the measured losses of spin). */
const byMoisture: Readonly<Record<Moisture, number>> = { dry: 0.4, damp: 0.2, wet: 0.12 };

/** Grass that comes between: friction at most this, share of the speed it leaves, and how much more it takes wet. Assumed. */
const grass: Readonly<
  Record<Cover, { readonly friction: number; readonly speed: number; readonly wet: number }>
> = {
  green: { friction: 0.4, speed: 1, wet: 0 },
  fringe: { friction: 0.4, speed: 1, wet: 0.01 },
  approach: { friction: 0.4, speed: 1, wet: 0.01 },
  fairway: { friction: 0.4, speed: 0.99, wet: 0.01 },
  lightRough: { friction: 0.2, speed: 0.93, wet: 0.04 },
  heavyRough: { friction: 0.12, speed: 0.8, wet: 0.08 },
  bare: { friction: 0.4, speed: 1, wet: 0.02 },
  bunker: { friction: 0.2, speed: 0.95, wet: 0 },
  penaltyArea: { friction: 0.12, speed: 0.7, wet: 0.08 },
  outOfBounds: { friction: 0.2, speed: 0.93, wet: 0.04 },
  path: { friction: 0.4, speed: 1, wet: 0 },
  tee: { friction: 0.4, speed: 1, wet: 0 },
};

/** How well the ball sits. Assumed; up and down are mild, buried is grass or earth all round it. */
const sitting: Readonly<
  Record<LieQuality, { readonly friction: number; readonly speed: number; readonly loftDeg: number }>
> = {
  clean: { friction: 1, speed: 1, loftDeg: 0 },
  sittingUp: { friction: 0.9, speed: 0.94, loftDeg: 1 },
  sittingDown: { friction: 0.6, speed: 0.9, loftDeg: -1 },
  buried: { friction: 0.3, speed: 0.6, loftDeg: -2 },
  divot: { friction: 0.8, speed: 0.95, loftDeg: -2 },
};

export const wetnessOf = (moisture: Moisture): number =>
  moisture === 'wet' ? 1 : moisture === 'damp' ? 0.5 : 0;

export function faceContact(lie: Lie, conditions: Conditions): FaceContact {
  const g = grass[lie.cover];
  // A ball that sits up in long grass is half clear of it.
  const up = lie.quality === 'sittingUp';
  const q = sitting[lie.quality];
  const speed = g.speed - g.wet * wetnessOf(conditions.moisture);
  return {
    friction:
      q.friction * Math.min(byMoisture[conditions.moisture], up ? (g.friction + 0.4) / 2 : g.friction),
    speedShare: q.speed * (up ? (speed + 1) / 2 : speed),
    loftDeg: q.loftDeg,
  };
}
