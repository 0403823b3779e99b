import type { Ground } from '../../../shared/ball/ground.ts';
import type { Conditions } from '../../../shared/ball/shot.ts';

/** Stimp 10, dry, still. */
export const levelDay: Conditions = {
  stimpFt: 10,
  firmness: 0.5,
  moisture: 'dry',
  windMps: 0,
  windFromDeg: 0,
};

/** An endless green that rises to the north by a slope in percent. */
export function tiltedGround(slopePct: number): Ground {
  return {
    maxHeightM: 1000,
    obstacles: [],
    sample(at, out) {
      out[0] = (slopePct / 100) * (at[1] ?? NaN);
      out[1] = 0;
      out[2] = slopePct / 100;
      out[3] = 0;
    },
  };
}
