import { RADIANS_PER_DEGREE } from '../ball/constants.ts';
import { outcomes } from '../ball/shot.ts';
import { slots } from '../ball/slots.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { length2 } from '../numeric/elementary.ts';
import { skillOf } from '../player/skill.ts';
import { generator } from '../random/generator.ts';
import type { ApproachLine } from './approachLine.ts';
import { approachShot } from './approachShot.ts';
import type { Scene } from './scene.ts';

/** Where approach shots stop off the green. */
export interface LikelyMisses {
  /** Flat [east, north] pairs of the balls that stopped off the green. */
  readonly offM: Float64Array;
  readonly shots: number;
  /** Balls in penalty areas or out of bounds. */
  readonly lost: number;
  /** Middles of the groups the misses fall into, most balls first. */
  readonly spots: readonly { readonly at: PlanePoint; readonly share: number }[];
}

/**
 * A tour player's approach from 150 yd ends about 27 ft from the hole (from memory): 6 % of the distance, so 4.8 % along
 * and across for a round spread (mean distance = 1.253 standard deviations). Other levels in the proportion of their
 * short-game spreads. Assumed: no more than a help for choosing where to pin balls.
 */
const TOUR_SPREAD = 0.048;
const ROUNDS = 12;

/**
 * Plays at the target of an approach line, with the spread of a level at the landing, lets every ball bounce
 * and roll on the real ground, and groups those that stop off the green. Balls in penalty areas and out of bounds are left
 * out, since nobody plays them from there.
 */
export function likelyMisses(
  scene: Pick<Scene, 'ground' | 'conditions' | 'player'>,
  line: ApproachLine,
  options: { readonly shots: number; readonly spots: number; readonly seed: number },
): LikelyMisses {
  const { ground, conditions, player } = scene;
  const bearing = line.bearingDeg * RADIANS_PER_DEGREE;
  const approach = approachShot(ground, conditions, player, line.target, bearing, line.distanceM);
  const spreadM = TOUR_SPREAD * skillOf(player.level).shortGame * line.distanceM;
  const random = generator(options.seed);
  const off: PlanePoint[] = [];
  let lost = 0;
  for (let i = 0; i < options.shots; i += 1) {
    const beyondM = spreadM * random.normal();
    const rightM = spreadM * random.normal();
    const outcome = outcomes[approach.play(beyondM, rightM)];
    const at = { eastM: approach.out[slots.restEastM] ?? 0, northM: approach.out[slots.restNorthM] ?? 0 };
    if (outcome === 'penaltyArea' || outcome === 'outOfBounds') lost += 1;
    else if (outcome === 'atRest' && ground.coverAt(at) !== 'green') off.push(at);
  }
  const offM = new Float64Array(2 * off.length);
  off.forEach(({ eastM, northM }, i) => {
    offM[2 * i] = eastM;
    offM[2 * i + 1] = northM;
  });
  return { offM, shots: options.shots, lost, spots: grouped(off, options.spots) };
}

/** Groups by nearest middle (Lloyd's rounds, from middles chosen far apart); each told by its ball nearest the middle. */
function grouped(points: readonly PlanePoint[], count: number): LikelyMisses['spots'] {
  const first = points[0];
  if (first === undefined) return [];
  const apart = (a: PlanePoint, b: PlanePoint): number => length2(a.eastM - b.eastM, a.northM - b.northM);
  const nearest = (point: PlanePoint, middles: readonly PlanePoint[]): number =>
    middles.reduce(
      (best, middle, i) => (apart(point, middle) < apart(point, middles[best] ?? middle) ? i : best),
      0,
    );
  let middles: PlanePoint[] = [first];
  while (middles.length < Math.min(count, points.length)) {
    const far = points.reduce((best, point) => {
      const gap = (p: PlanePoint): number => apart(p, middles[nearest(p, middles)] ?? p);
      return gap(point) > gap(best) ? point : best;
    });
    middles.push(far);
  }
  let groups: PlanePoint[][] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    groups = middles.map(() => []);
    for (const point of points) groups[nearest(point, middles)]?.push(point);
    middles = groups.map((group, i) =>
      group.length === 0
        ? (middles[i] ?? first)
        : {
            eastM: group.reduce((sum, p) => sum + p.eastM, 0) / group.length,
            northM: group.reduce((sum, p) => sum + p.northM, 0) / group.length,
          },
    );
  }
  return groups
    .flatMap((group, i) => {
      const middle = middles[i];
      const lead = group[0];
      if (middle === undefined || lead === undefined) return [];
      const at = group.reduce((best, p) => (apart(p, middle) < apart(best, middle) ? p : best), lead);
      return [{ at, share: group.length / points.length }];
    })
    .sort((a, b) => b.share - a.share);
}
