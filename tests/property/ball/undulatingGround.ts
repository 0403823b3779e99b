import type { Ground } from '../../../shared/ball/ground.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';

const green = coverCode('green');
const fringe = coverCode('fringe');
const fairway = coverCode('fairway');
const rough = coverCode('lightRough');

/** Smooth waves of 17 and 23 m under a 2 % fall, fairway and rough before a fringe and a green. */
export function undulatingGround(): Ground {
  return {
    maxHeightM: 2,
    obstacles: [],
    sample(at, out) {
      const x = at[0] ?? NaN;
      const y = at[1] ?? NaN;
      const a = Math.sin(0.37 * x);
      const b = Math.sin(0.27 * y);
      out[0] = 0.08 * a * b + 0.02 * Math.max(-30, Math.min(60, y));
      out[1] = 0.08 * 0.37 * Math.cos(0.37 * x) * b;
      out[2] = 0.08 * 0.27 * a * Math.cos(0.27 * y) + (y > -30 && y < 60 ? 0.02 : 0);
      const r = Math.sqrt(x * x + (y - 14) * (y - 14));
      out[3] = r < 10 ? green : r < 10.8 ? fringe : x > 6 ? rough : fairway;
    },
  };
}
