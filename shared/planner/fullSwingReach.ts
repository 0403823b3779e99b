import type { PlayerRecord } from '../atlas/records.ts';
import { RADIANS_PER_DEGREE } from '../ball/constants.ts';
import { inclinedPlane } from '../ball/inclinedPlane.ts';
import { shotSimulator } from '../ball/simulator.ts';
import { SLOT_COUNT, slots } from '../ball/slots.ts';
import type { Conditions } from '../ball/shot.ts';
import { strikeSolver } from '../ball/strikeVectors.ts';
import { length2 } from '../numeric/elementary.ts';
import { approachStrike, FAIRWAY_LIE } from './approachShot.ts';

/** How far a player's full swing with a loft gets until the ball rests, metres: along a bearing (degrees) over level fairway. */
export function fullSwingReachM(
  player: Pick<PlayerRecord, 'level' | 'handed'>,
  conditions: Conditions,
  bearingDeg: number,
  loftDeg: number,
): number {
  const strike = approachStrike(player, bearingDeg, loftDeg);
  const along = bearingDeg * RADIANS_PER_DEGREE;
  const launch = new Float64Array(6);
  const out = new Float64Array(SLOT_COUNT);
  strikeSolver(strike, FAIRWAY_LIE, conditions).vectors(strike.clubheadMps, along, 0, 0, 0, launch);
  shotSimulator(inclinedPlane(0, 0, 'fairway'), conditions, null).run(0, 0, launch, out);
  return length2(out[slots.restEastM] ?? 0, out[slots.restNorthM] ?? 0);
}
