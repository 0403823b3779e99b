import type { PlanePoint } from '../geometry/points.ts';
import { lineLengthM } from '../geometry/ring.ts';
import { evenly } from './folds.ts';

/** The ground along a line. Parallel arrays; `coverCodes` are positions in `covers`. */
export interface Section {
  readonly distancesM: Float64Array;
  readonly heightsM: Float64Array;
  readonly coverCodes: Uint8Array;
}

/** What a section is cut through: any ground that samples height and cover. */
export interface SectionGround {
  sample(at: Float64Array, out: Float64Array): void;
}

/** Heights and covers along a line at even spacing close to the one asked for, its ends included. */
export function sectionAlong(ground: SectionGround, line: readonly PlanePoint[], spacingM = 0.25): Section {
  const points = evenly(line, spacingM);
  const distancesM = new Float64Array(points.length);
  const heightsM = new Float64Array(points.length);
  const coverCodes = new Uint8Array(points.length);
  const total = lineLengthM(line);
  const out = new Float64Array(4);
  points.forEach((point, i) => {
    ground.sample(Float64Array.of(point.eastM, point.northM), out);
    distancesM[i] = points.length > 1 ? (total * i) / (points.length - 1) : 0;
    heightsM[i] = out[0] as number;
    coverCodes[i] = out[3] as number;
  });
  return { distancesM, heightsM, coverCodes };
}
