import type { PlayerRecord } from '../atlas/records.ts';
import { RADIANS_PER_DEGREE } from '../ball/constants.ts';
import type { Conditions, Lie, Strike } from '../ball/shot.ts';
import { shotSimulator } from '../ball/simulator.ts';
import { SLOT_COUNT, slots } from '../ball/slots.ts';
import { strikeSolver } from '../ball/strikeVectors.ts';
import type { Ground } from '../ball/ground.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, cos, exp, log, sin } from '../numeric/elementary.ts';
import { fullSwingMps } from '../player/swingSize.ts';

/** An approach from far out: what it leaves is in `out`, by the ball model's slots. */
export interface ApproachShot {
  readonly out: Float64Array;
  /** One shot this far beyond and to the right of the one meant, metres at the distance played; returns the outcome. */
  play(beyondM: number, rightM: number): number;
}

/** Ball first from a level fairway lie, hands a little ahead: common practice of iron play. */
const LEAN_DEG = 4;
const ATTACK_DEG = -4;
export const FAIRWAY_LIE: Lie = { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0 };
/** Lofts an approach is played with; at the last one the swing gets shorter instead. */
const LEAST_LOFT_DEG = 15;
const MOST_LOFT_DEG = 56;
/** The loft the full swing of a level is told for, and what each degree less adds to it: longer shafts (from memory). */
const USUAL_LOFT_DEG = 42;
const SPEED_PER_DEGREE = 0.007;
const HALVINGS = 14;
const TURNS = 3;

/** A full swing with a loft, as an approach is struck along a bearing (degrees). */
export function approachStrike(
  { level, handed }: Pick<PlayerRecord, 'level' | 'handed'>,
  bearingDeg: number,
  loftDeg: number,
): Strike {
  return {
    clubKind: 'lofted',
    loftDeg,
    bounceDeg: 6,
    leanDeg: LEAN_DEG,
    attackDeg: ATTACK_DEG,
    faceOpenDeg: 0,
    ballFirst: true,
    clubheadMps: fullSwingMps(level) * (1 + SPEED_PER_DEGREE * (USUAL_LOFT_DEG - loftDeg)),
    bearingDeg,
    handed,
  };
}

/**
 * A full shot of the player from far out, along a bearing (radians), that would stop at `target` when struck as meant: the
 * loft follows from the distance and the player's full swing, a shorter swing where the most loft still goes too far.
 */
export function approachShot(
  ground: Ground,
  conditions: Conditions,
  player: Pick<PlayerRecord, 'level' | 'handed'>,
  target: PlanePoint,
  bearing: number,
  distanceM: number,
): ApproachShot {
  const [ue, un] = [sin(bearing), cos(bearing)];
  const from = { eastM: target.eastM - ue * distanceM, northM: target.northM - un * distanceM };
  const simulator = shotSimulator(ground, conditions, null);
  const out = new Float64Array(SLOT_COUNT);
  const launch = new Float64Array(6);
  const strikeWith = (loftDeg: number): Strike =>
    approachStrike(player, bearing / RADIANS_PER_DEGREE, loftDeg);
  let solver = strikeSolver(strikeWith(MOST_LOFT_DEG), FAIRWAY_LIE, conditions);
  const shoot = (clubheadMps: number, along: number): number => {
    solver.vectors(clubheadMps, along, 0, 0, 0, launch);
    return simulator.run(from.eastM, from.northM, launch, out);
  };
  const reached = (): number =>
    ((out[slots.restEastM] ?? 0) - from.eastM) * ue + ((out[slots.restNorthM] ?? 0) - from.northM) * un;

  let line = bearing;
  let speed = strikeWith(MOST_LOFT_DEG).clubheadMps;
  shoot(speed, line);
  if (reached() >= distanceM) {
    let [short, long] = [0, speed];
    for (let i = 0; i < HALVINGS; i += 1) {
      speed = (short + long) / 2;
      shoot(speed, line);
      if (reached() < distanceM) short = speed;
      else long = speed;
    }
  } else {
    let [farther, nearer] = [LEAST_LOFT_DEG, MOST_LOFT_DEG];
    for (let i = 0; i < HALVINGS; i += 1) {
      const loftDeg = (farther + nearer) / 2;
      const strike = strikeWith(loftDeg);
      solver = strikeSolver(strike, FAIRWAY_LIE, conditions);
      speed = strike.clubheadMps;
      shoot(speed, line);
      if (reached() < distanceM) nearer = loftDeg;
      else farther = loftDeg;
    }
  }
  for (let i = 0; i < TURNS; i += 1) {
    shoot(speed, line);
    const [east, north] = [
      (out[slots.restEastM] ?? 0) - from.eastM,
      (out[slots.restNorthM] ?? 0) - from.northM,
    ];
    line += bearing - atan2(east, north);
  }
  // How the carry grows with the swing, for spreading shots along the line.
  const carryWith = (clubheadMps: number): number => {
    shoot(clubheadMps, line);
    return Math.max(0.1, out[slots.carryM] ?? 0);
  };
  const touch = Math.max(0.3, log(carryWith(1.02 * speed) / carryWith(speed)) / log(1.02));
  const carryM = carryWith(speed);
  return {
    out,
    play: (beyondM, rightM) =>
      shoot(speed * exp(log(Math.max(0.2, 1 + beyondM / carryM)) / touch), line + atan2(rightM, distanceM)),
  };
}
