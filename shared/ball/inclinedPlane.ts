import { cos, sin } from '../numeric/elementary.ts';
import { coverCode, type Cover } from '../words/vocabulary.ts';
import { RADIANS_PER_DEGREE } from './constants.ts';
import type { Ground } from './ground.ts';

/** One plane of one cover through the origin at height 0: the ground of checks and of single shots. */
export function inclinedPlane(slopePct: number, downhillBearingDeg: number, cover: Cover): Ground {
  const bearing = downhillBearingDeg * RADIANS_PER_DEGREE;
  // A level plane is exactly level.
  const east = slopePct === 0 ? 0 : (-slopePct / 100) * sin(bearing);
  const north = slopePct === 0 ? 0 : (-slopePct / 100) * cos(bearing);
  const code = coverCode(cover);
  return {
    maxHeightM: slopePct === 0 ? 0 : Infinity,
    obstacles: [],
    sample(at, out) {
      out[0] = east * (at[0] as number) + north * (at[1] as number); // a point has two coordinates
      out[1] = east;
      out[2] = north;
      out[3] = code;
    },
  };
}
