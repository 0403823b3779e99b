import { cos, sin, atan2, exp, log } from '../numeric/elementary.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH, type Shooter, USUAL_TOUCH } from './shooter.ts';

/** A size and a direction of one technique with one club. */
export interface Aim {
  readonly clubheadMps: number;
  /** Bearing of the start line, radians clockwise from north. */
  readonly bearing: number;
}

export interface Solved extends Aim {
  /** How far from the target the perfect strike still ends, metres. */
  readonly missM: number;
  /** Growth of log distance with log clubhead speed at the solution: how touchy the shot is. */
  readonly touch: number;
}

const SLOWEST_MPS = 0.3;
const ROUNDS = 14;
/** Strikes at the fastest or slowest swing, the line corrected in between, before the shot counts as out of reach. */
const ROUNDS_AT_LIMIT = 2;
/** A bracket of speeds narrower than this share of them is closed: no player swings more exactly. */
const NARROW = 0.001;
/** Near enough to the target, besides a share of the way. */
const CLOSE_M = 0.02;

/**
 * Size and start line that bring the perfect strike to rest at a target (or to land on it, with `where`
 * 'landing'), on the real ground with the hole covered. Secant steps in log speed inside a bracket; the start
 * line is turned by what the shot missed to the side. Where the ground lets no size stop there, the nearest
 * found is returned with its miss.
 */
export function solveAim(
  shooter: Shooter,
  from: PlanePoint,
  target: PlanePoint,
  where: 'rest' | 'landing',
  start?: Aim,
  closeM = CLOSE_M,
): Solved {
  const east = target.eastM - from.eastM;
  const north = target.northM - from.northM;
  const distance = Math.max(0.05, Math.sqrt(east * east + north * north));
  const straight = atan2(east, north);
  const ux = east / distance;
  const uy = north / distance;
  const out = shooter.out;
  const eastAt = where === 'rest' ? REST_EAST : LAND_EAST;
  const northAt = where === 'rest' ? REST_NORTH : LAND_NORTH;

  let low = SLOWEST_MPS;
  const fastest = shooter.fastestMps;
  let high = fastest;
  const guess = start === undefined ? shooter.guess(distance) : null;
  let speed = Math.min(fastest, start?.clubheadMps ?? guess?.clubheadMps ?? fastest);
  let bearing = start?.bearing ?? straight - (guess?.rightRad ?? 0);
  let best: Aim = { clubheadMps: speed, bearing };
  let bestMiss = Infinity;
  let touch = USUAL_TOUCH;
  let lastSpeed = NaN;
  let lastReach = NaN;
  let atLimit = 0;
  let opened = false;
  for (let round = 0; round < ROUNDS; round += 1) {
    shooter.perfect(speed, bearing);
    const dx = (out[eastAt] ?? 0) - from.eastM;
    const dy = (out[northAt] ?? 0) - from.northM;
    const along = dx * ux + dy * uy;
    const across = dx * uy - dy * ux; // positive right of the line
    const miss = Math.sqrt((along - distance) * (along - distance) + across * across);
    if (miss < bestMiss) {
      bestMiss = miss;
      best = { clubheadMps: speed, bearing };
    }
    if (miss < closeM + 0.002 * distance) break;
    // A shot that comes back or hardly moves is short, whatever its distance.
    const reach = Math.max(0.01, along);
    if (reach > distance) high = Math.min(high, speed);
    else low = Math.max(low, speed);
    if (lastSpeed === lastSpeed && Math.abs(speed - lastSpeed) > 1e-6 && reach !== lastReach) {
      const slope = (log(reach) - log(lastReach)) / (log(speed) - log(lastSpeed));
      if (slope > 0.4 && slope < 6) touch = slope;
    }
    lastSpeed = speed;
    lastReach = reach;
    const tooWeak = speed === fastest && reach < distance;
    const tooStrong = speed === SLOWEST_MPS && reach > distance;
    atLimit = tooWeak || tooStrong ? atLimit + 1 : 0;
    if (atLimit === ROUNDS_AT_LIMIT) break;
    const step = Math.min(1, Math.max(-1, (log(distance) - log(reach)) / touch));
    let next = speed * exp(step);
    if (!(next > low && next < high)) next = low > SLOWEST_MPS && high < fastest ? (low + high) / 2 : next;
    next = Math.min(fastest, Math.max(SLOWEST_MPS, next));
    if (high - low < NARROW * speed) {
      // The bracket closed on a jump (an edge of cover, a crest), or the line has moved since: open it and go on, once.
      if (opened) break;
      opened = true;
      low = Math.max(SLOWEST_MPS, speed * 0.9);
      high = Math.min(fastest, speed * 1.1);
    }
    speed = next;
    if (along > 0.3 * distance) bearing -= Math.min(0.3, Math.max(-0.3, atan2(across, along)));
  }
  return { ...best, missM: bestMiss, touch };
}

/** The target moved along and to the right of the line from the ball to it, metres. */
export function shifted(from: PlanePoint, target: PlanePoint, alongM: number, rightM: number): PlanePoint {
  const bearing = atan2(target.eastM - from.eastM, target.northM - from.northM);
  const ux = sin(bearing);
  const uy = cos(bearing);
  return {
    eastM: target.eastM + alongM * ux + rightM * uy,
    northM: target.northM + alongM * uy - rightM * ux,
  };
}
