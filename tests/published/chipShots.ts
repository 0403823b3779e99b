import { coverTable } from '../../shared/ball/coverPhysics.ts';
import { inclinedPlane } from '../../shared/ball/inclinedPlane.ts';
import { launchFromStrike } from '../../shared/ball/launchFromStrike.ts';
import type { Conditions, Lie, ShotResult, Strike } from '../../shared/ball/shot.ts';
import { shotSimulator } from '../../shared/ball/simulator.ts';
import { coverCode } from '../../shared/words/vocabulary.ts';

export const YARD_M = 0.9144;
export const FOOT_M = 0.3048;
export const ordinaryDay: Conditions = {
  stimpFt: 10,
  firmness: 0.5,
  moisture: 'dry',
  windMps: 0,
  windFromDeg: 0,
};

export interface Chip {
  readonly loftDeg: number;
  readonly carryM: number;
  readonly leanDeg?: number;
  readonly attackDeg?: number;
  /** Fall of the green along the line, per cent, downhill positive. */
  readonly fallPct?: number;
  readonly lie?: Partial<Lie>;
  readonly day?: Partial<Conditions>;
  /** Constants of the green's turf in place of the day's own. */
  readonly turf?: { readonly tiltDeg?: number; readonly restitution?: number; readonly friction?: number };
}

/** The chip with the clubhead speed that carries as far as asked. */
export function chip(shot: Chip): ShotResult {
  const day = { ...ordinaryDay, ...shot.day };
  const lie: Lie = { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0, ...shot.lie };
  const covers = coverTable(day);
  const green = coverCode('green');
  const { tiltDeg, restitution, friction } = shot.turf ?? {};
  if (tiltDeg !== undefined) covers.tiltRad[green] = (tiltDeg * Math.PI) / 180;
  if (restitution !== undefined) covers.restitution[green] = restitution;
  if (friction !== undefined) covers.friction[green] = friction;
  const simulator = shotSimulator(inclinedPlane(shot.fallPct ?? 0, 0, 'green'), day, null, { covers });
  const strike: Strike = {
    clubKind: 'lofted',
    loftDeg: shot.loftDeg,
    bounceDeg: 8,
    leanDeg: shot.leanDeg ?? 5,
    attackDeg: shot.attackDeg ?? -4,
    faceOpenDeg: 0,
    clubheadMps: 0,
    bearingDeg: 0,
    handed: 'right',
  };
  const shoot = (clubheadMps: number): ShotResult =>
    simulator.trace(0, 0, launchFromStrike({ ...strike, clubheadMps }, lie, day)).result;
  let low = 0.5;
  let high = 60;
  for (let k = 0; k < 50; k += 1) {
    const middle = (low + high) / 2;
    if (shoot(middle).carryM < shot.carryM) low = middle;
    else high = middle;
  }
  return shoot(high);
}

export const runRatio = (shot: Chip): number => {
  const result = chip(shot);
  return result.runM / result.carryM;
};
