import type { PlanePoint } from '../geometry/points.ts';
import type { Cover, LieQuality } from '../words/vocabulary.ts';
import type { FlagTools } from './flagTools.ts';
import type { Scene } from './scene.ts';

/** One ball and one flag, with everything that every option is judged by. */
export interface Situation {
  readonly scene: Scene;
  readonly tools: FlagTools;
  readonly ball: PlanePoint;
  readonly flag: PlanePoint;
  readonly cover: Cover;
  readonly quality: LieQuality;
  readonly distanceM: number;
  /** From the ball to the flag, radians clockwise from north. */
  readonly bearing: number;
  /**
   * Shots for searching, and other shots for the final figures, so that the search cannot flatter its own find.
   */
  readonly searchShots: Float64Array;
  readonly finalShots: Float64Array;
}
