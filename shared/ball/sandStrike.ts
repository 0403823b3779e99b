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

/**
 * No usable table of bunker launches is published. Typical: launch 40 to 50 degrees, 1,000 to 3,500 rpm, ball to club
 * speed 0.35 to 0.45 (from memory, weak). Within those spans: a thinner, firmer or wetter cushion of sand passes on
 * more speed and more spin (the order of spin is found: McCormick & McPhee); a buried ball comes out low, slow and
 * without spin. The spread of the law is assumed, a person should set it from what they see.
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
      return { speedRatio: 0.28, launchPerLoft: 0.6, spinPerMps: 25 };
    case 'sittingDown':
    case 'divot':
      return {
        ...clean,
        speedRatio: clean.speedRatio - 0.05,
        launchPerLoft: clean.launchPerLoft - 0.06,
        spinPerMps: clean.spinPerMps * 0.6,
      };
    default:
      return clean;
  }
}
