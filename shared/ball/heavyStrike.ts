import type { Conditions, Lie, Strike } from './shot.ts';
import { wetnessOf } from './faceContact.ts';

export interface HeavyStrike {
  /** Share of the clubhead speed that the heaviest strike loses. */
  readonly speedLoss: number;
  /** Loft it loses, degrees, where the sole skips off firm ground into the ball. */
  readonly loftLossDeg: number;
}

/**
 * How forgiving a heavy strike is, by what the sole shows to the ground. Soft ground swallows a leading edge that a wide
 * angle of bounce would have carried through; on firm or bare ground much bounce skips up into the ball instead.
 * Common practice in direction, assumed in size: bounce counts with half the opening added and the lean taken off.
 */
export function heavyStrike(strike: Strike, lie: Lie, conditions: Conditions): HeavyStrike {
  // Sand first where the ball was meant: the heaviest leaves what a splash of that swing would. Assumed from its law.
  if (lie.cover === 'bunker' && strike.ballFirst === true) return { speedLoss: 0.7, loftLossDeg: 0 };
  const hard = lie.cover === 'bare' || lie.cover === 'path' ? 0.35 : lie.cover === 'bunker' ? -0.2 : 0;
  const firm = Math.min(1, Math.max(0, conditions.firmness + hard - 0.2 * wetnessOf(conditions.moisture)));
  const shown = Math.max(
    0,
    Math.min(
      24,
      strike.bounceDeg + 0.5 * strike.faceOpenDeg - strike.leanDeg - Math.max(0, -strike.attackDeg - 4) * 0.5,
    ),
  );
  const glide = shown / 14;
  const dig = Math.min(1, Math.max(0, (1 - firm) * (1.15 - 0.75 * glide) + 0.1));
  const skip = Math.min(1, Math.max(0, firm * (glide - 0.35)));
  return { speedLoss: 0.2 + 0.55 * dig, loftLossDeg: 20 * skip };
}
