import { SLOPE_PULL_MPS2 } from '../ball/constants.ts';
import type { Ground } from '../ball/ground.ts';
import { coverCode } from '../words/vocabulary.ts';

/** A rolling ball by its place, heading and squared speed: x, y, ux, uy, v^2 at 0..4. */
export const PATH_SIZE = 5;

/** How far a path is followed at a time, metres: close to the hole and farther out. */
export interface PathSteps {
  readonly nearM: number;
  readonly farM: number;
}

const here = new Float64Array(4);
const halfway = new Float64Array(2);
const GREEN = coverCode('green');

/**
 * The ground under a putt, as `Ground.sample`, with the pull of the grain as the fall that would pull as much.
 * @param rollingMps2 resistance by cover
 */
export function samplePutt(
  ground: Ground,
  rollingMps2: Float64Array,
  at: Float64Array,
  out: Float64Array,
): void {
  ground.sample(at, out);
  const { grain } = ground;
  if (grain === undefined || out[3] !== GREEN) return;
  const fall = (rollingMps2[GREEN] ?? 0) / SLOPE_PULL_MPS2;
  out[1] = (out[1] ?? 0) - fall * grain.eastShare;
  out[2] = (out[2] ?? 0) - fall * grain.northShare;
}

/**
 * Moves a rolling ball along its path by `ds` metres, backwards in time where negative, by the midpoint rule.
 * Along a path d(v^2)/ds = -2 (a + 5/7 g h_u) and du/ds = -(5/7) g h_n / v^2, with the gradient along and
 * across the heading: the same motion as `roll` in shared/ball, without its rest and its hole, and with the
 * hole's v^2 known at either end.
 */
export function stepPath(ground: Ground, rollingMps2: Float64Array, path: Float64Array, ds: number): void {
  const x = path[0] ?? 0;
  const y = path[1] ?? 0;
  const ux = path[2] ?? 0;
  const uy = path[3] ?? 0;
  const v2 = path[4] ?? 0;
  samplePutt(ground, rollingMps2, path, here);
  let gx = here[1] ?? 0;
  let gy = here[2] ?? 0;
  let along = gx * ux + gy * uy;
  const half2 = Math.max(0.01, v2 - ds * ((rollingMps2[here[3] ?? 0] ?? 0.5) + SLOPE_PULL_MPS2 * along));
  const bend = (0.5 * ds * SLOPE_PULL_MPS2) / half2;
  let mx = ux - bend * (gx - along * ux);
  let my = uy - bend * (gy - along * uy);
  let norm = Math.sqrt(mx * mx + my * my);
  mx /= norm;
  my /= norm;
  halfway[0] = x + 0.5 * ds * mx;
  halfway[1] = y + 0.5 * ds * my;
  samplePutt(ground, rollingMps2, halfway, here);
  gx = here[1] ?? 0;
  gy = here[2] ?? 0;
  along = gx * mx + gy * my;
  path[4] = v2 - 2 * ds * ((rollingMps2[here[3] ?? 0] ?? 0.5) + SLOPE_PULL_MPS2 * along);
  const nx = ux - 2 * bend * (gx - along * mx);
  const ny = uy - 2 * bend * (gy - along * my);
  norm = Math.sqrt(nx * nx + ny * ny);
  path[2] = nx / norm;
  path[3] = ny / norm;
  path[0] = x + ds * mx;
  path[1] = y + ds * my;
}
