import type { Conditions, Lie } from './shot.ts';
import { wetnessOf } from './faceContact.ts';

/** A strike through the sand behind the ball, per metre per second of clubhead speed. */
export interface SandStrike {
  /** Ball speed over clubhead speed. */
  readonly speedRatio: number;
  /** Launch above the sand's surface per degree of loft at impact. */
  readonly launchPerLoft: number;
  /** Backspin, rpm per m/s of clubhead. */
  readonly spinPerMps: number;
}

/** Sand taken along by a ball that sits down, and by a buried one whose cut is a ball's radius deeper. Assumed. */
const SAND_UNDER_SITTING_DOWN = 1.2;
const SAND_UNDER_BURIED = 1.5;

/**
 * Ball over clubhead speed with `more` times the sand: club, sand and ball leave at one speed, so that by momentum
 * 1 / ratio - 1 goes with the mass that is taken along.
 */
const withMoreSand = (ratio: number, more: number): number => 1 / (1 + more * (1 / ratio - 1));

/**
 * No usable table of bunker launches is published. Typical: launch 40 to 50 degrees, 1,000 to 3,500 rpm, ball to club
 * speed 0.35 to 0.45 (from memory, weak). Within those spans: a thinner, firmer or wetter cushion of sand passes on
 * more speed and more spin (the order of spin is found: McCormick & McPhee). From a buried lie the ball comes out
 * slower, lower and without spin (common practice); the sizes are assumed: by momentum from half as much sand again
 * 0.27 to 0.34 of the clubhead's speed, and a square 56 launches at 35 to 38 degrees where an opened one splashes at
 * 45. A person should set all this from what they see.
 */
export function sandStrike(lie: Lie, conditions: Conditions): SandStrike {
  const firm = Math.min(1, Math.max(0, conditions.firmness + 0.3 * wetnessOf(conditions.moisture)));
  const clean = {
    speedRatio: 0.36 + 0.08 * firm,
    launchPerLoft: 0.78 - 0.06 * firm,
    spinPerMps: 90 + 80 * firm,
  };
  switch (lie.quality) {
    case 'buried':
      return {
        speedRatio: withMoreSand(clean.speedRatio, SAND_UNDER_BURIED),
        launchPerLoft: clean.launchPerLoft - 0.06,
        spinPerMps: 25,
      };
    case 'sittingDown':
    case 'divot':
      return {
        speedRatio: withMoreSand(clean.speedRatio, SAND_UNDER_SITTING_DOWN),
        launchPerLoft: clean.launchPerLoft - 0.05,
        spinPerMps: clean.spinPerMps * 0.6,
      };
    default:
      return clean;
  }
}
