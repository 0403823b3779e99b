import type { Ground } from '../ball/ground.ts';
import { atan2, cos, sin } from '../numeric/elementary.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { SLOPE_PULL_MPS2 } from '../ball/constants.ts';
import { PATH_SIZE, type PathSteps, samplePutt, stepPath } from './puttPath.ts';

/**
 * Line and pace of every putt at one hole, from rolling putts backwards in time out of it: one backward path
 * per direction of entry, each leaving the hole at the pace meant there, tells the start line and speed of
 * every point it passes. Points between two paths take from both.
 */
export interface PuttLines {
  /**
   * Writes start speed (m/s), start bearing (radians clockwise from north) and speed at the hole of the putt from
   * a point at angle `angleRad` (clockwise from north, seen from the hole) on ring number `ring` of `radiiM` into
   * out[0..2]; false where no path passes and the putt along the straight line is written instead.
   */
  at(ring: number, angleRad: number, out: Float64Array): boolean;
}

const TOP_SPEED2 = 15 * 15;
/** Within this of the hole the paths bend most, metres. */
const NEAR_M = 1;
const FINE_STEPS: PathSteps = { nearM: 0.025, farM: 0.08 };
/** A path goes on while a point that is asked for lies this far to either side of it or less, seen from the hole, radians. */
const WANTED_WITHIN = 0.9;
/** Two neighbouring paths farther apart than this on a ring leave a gap between them, radians. */
const WIDEST_GAP = 0.6;

/**
 * @param radiiM rings around the hole, rising.
 * @param pastM how far past the hole the pace would carry on the slope there; never less pace than on ground
 *   that brakes a quarter as well as the level green, so that a putt down a steep slope still arrives.
 * @param rollingMps2 deceleration on the level by cover code.
 * @param directions backward paths, evenly spread by direction of entry.
 * @param wanted the points that will be asked for: ring by ring, on spokes clockwise from north, 1 for those that will; all
 *   if left out. A path does not go on where none of them is ahead, and so depends on no ground there.
 * @param steps of the paths
 */
export function puttLines(
  ground: Ground,
  hole: PlanePoint,
  radiiM: Float64Array,
  pastM: number,
  rollingMps2: Float64Array,
  directions: number,
  wanted?: Uint8Array,
  steps = FINE_STEPS,
): PuttLines {
  const rings = radiiM.length;
  const angle = new Float64Array(directions * rings).fill(NaN);
  const speed = new Float64Array(directions * rings);
  const bearing = new Float64Array(directions * rings);
  const atHole = new Float64Array(directions);
  const path = new Float64Array(PATH_SIZE);
  const here = new Float64Array(4);
  const endsAt = wanted === undefined ? null : ringsNeeded(wanted, rings);

  for (let d = 0; d < directions; d += 1) {
    const entry = (2 * Math.PI * d) / directions;
    const ux = sin(entry);
    const uy = cos(entry);
    samplePutt(ground, rollingMps2, Float64Array.of(hole.eastM, hole.northM), here);
    const level = rollingMps2[here[3] ?? 0] ?? 0.5;
    const along = (here[1] ?? 0) * ux + (here[2] ?? 0) * uy;
    path[0] = hole.eastM;
    path[1] = hole.northM;
    path[2] = ux;
    path[3] = uy;
    path[4] = 2 * pastM * Math.max(0.25 * level, level + SLOPE_PULL_MPS2 * along);
    atHole[d] = Math.sqrt(path[4]);
    let before = 0;
    let ring = 0;
    for (let guard = 0; guard < 4000 && ring < rings; guard += 1) {
      const step = before < NEAR_M ? steps.nearM : steps.farM;
      const x = path[0];
      const y = path[1];
      const v2 = path[4];
      stepPath(ground, rollingMps2, path, -step);
      const next2 = path[4];
      if (next2 < 0.01 || next2 > TOP_SPEED2) break;
      const dx = path[0] - hole.eastM;
      const dy = path[1] - hole.northM;
      const r = Math.sqrt(dx * dx + dy * dy);
      while (ring < rings && r >= (radiiM[ring] ?? 0)) {
        const share = r > before ? ((radiiM[ring] ?? 0) - before) / (r - before) : 1;
        const k = d * rings + ring;
        angle[k] = atan2(x + share * (path[0] - x) - hole.eastM, y + share * (path[1] - y) - hole.northM);
        speed[k] = Math.sqrt(v2 + share * (next2 - v2));
        bearing[k] = atan2(path[2], path[3]);
        ring += 1;
      }
      if (endsAt !== null && ring > 0 && endsAt(angle[d * rings + ring - 1] ?? 0) < ring) break;
      if (r < before - 0.02) break; // turned back: from farther out nothing comes in at this pace
      before = Math.max(before, r);
    }
  }

  const at = (ring: number, angleRad: number, out: Float64Array): boolean => {
    let best = Infinity;
    for (let d = 0; d < directions; d += 1) {
      const k = d * rings + ring;
      const next = ((d + 1) % directions) * rings + ring;
      const from = angle[k] ?? NaN;
      const to = angle[next] ?? NaN;
      if (from !== from || to !== to) continue;
      const span = wrapped(to - from);
      const offset = wrapped(angleRad - from);
      if (Math.abs(span) > WIDEST_GAP || Math.abs(offset) > WIDEST_GAP) continue;
      const share = span === 0 ? (offset === 0 ? 0 : -1) : offset / span;
      if (share < 0 || share > 1) continue;
      const pace = (speed[k] ?? 0) + share * ((speed[next] ?? 0) - (speed[k] ?? 0));
      // Where a fold brings two paths to one point, the gentler putt.
      if (pace >= best) continue;
      best = pace;
      out[0] = pace;
      out[1] = (bearing[k] ?? 0) + share * wrapped((bearing[next] ?? 0) - (bearing[k] ?? 0));
      out[2] = (atHole[d] ?? 0) + share * ((atHole[(d + 1) % directions] ?? 0) - (atHole[d] ?? 0));
    }
    if (best < Infinity) return true;
    const radius = radiiM[ring] ?? 1;
    samplePutt(ground, rollingMps2, Float64Array.of(hole.eastM, hole.northM), here);
    const level = rollingMps2[here[3] ?? 0] ?? 0.5;
    const top = here[0] ?? 0;
    ground.sample(
      Float64Array.of(hole.eastM + radius * sin(angleRad), hole.northM + radius * cos(angleRad)),
      here,
    );
    const rise = top - (here[0] ?? 0);
    out[0] = Math.sqrt(Math.max(0.04, 2 * level * (radius + pastM) + 2 * SLOPE_PULL_MPS2 * rise));
    out[1] = angleRad + Math.PI;
    out[2] = Math.sqrt(2 * level * pastM);
    return false;
  };
  return { at };
}

/** The outermost ring that a path seen at an angle from the hole can still be asked for. */
function ringsNeeded(wanted: Uint8Array, rings: number): (angleRad: number) => number {
  const spokes = wanted.length / rings;
  const outermost = new Int32Array(spokes).fill(-1);
  wanted.forEach((one, node) => {
    if (one === 1) outermost[node % spokes] = Math.floor(node / spokes);
  });
  const reach = Math.min(spokes >> 1, Math.ceil((WANTED_WITHIN / (2 * Math.PI)) * spokes));
  const needed = outermost.map((_, spoke) => {
    let most = -1;
    for (let k = -reach; k <= reach; k += 1) {
      most = Math.max(most, outermost[(spoke + k + spokes) % spokes] ?? -1);
    }
    return most;
  });
  return (angleRad) => {
    const spoke = Math.round((angleRad / (2 * Math.PI)) * spokes);
    return needed[((spoke % spokes) + spokes) % spokes] ?? rings;
  };
}

function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
