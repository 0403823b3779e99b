import { exp, log } from '../numeric/elementary.ts';
import { lineSdOf, type Shooter } from './shooter.ts';
import type { Aim, Solved } from './solveAim.ts';
import type { StrikeCloud } from './strikeCloud.ts';

/** Where aims are moved from: the one solved to stop at the first target, this far away. */
export interface Origin {
  readonly shooter: Shooter;
  readonly solved: Solved;
  readonly distanceM: number;
}

/** How far the intended finish is moved from the first target, metres beyond and to the right. */
export interface Move {
  readonly beyondM: number;
  readonly rightM: number;
}

/** No aim asks for more than the fastest swing. */
export function aimAt({ shooter, solved, distanceM }: Origin, { beyondM, rightM }: Move): Aim {
  const longer = exp(log(Math.max(0.2, 1 + beyondM / distanceM)) / solved.touch);
  return {
    clubheadMps: Math.min(shooter.fastestMps, solved.clubheadMps * longer),
    bearing: solved.bearing + rightM / distanceM,
  };
}

/** A cloud tells of aims this many standard deviations of the player's strike away. */
const REACH_SD = 1.25;
/** Places looked at on either side. */
const LOOKS = 5;
/**
 * A move aside must save so many standard errors: a sample of level ground leans to one side or the other too. So hardly
 * any of 24 seeds turns a putt of 10 m on level ground, and all turn it from ground half a metre aside that costs a stroke.
 */
const BEYOND_LUCK = 1.5;

/**
 * The move of fewest strokes near another by what a cloud of shots tells, first along the line, then aside.
 * @param furthest the moves are at most so long, in shares of what a shot of that length is moved by at a time
 */
export function bestNear(origin: Origin, cloud: StrikeCloud, from: Move, furthest: number): Move {
  const { shooter, solved, distanceM } = origin;
  const { spread, strike } = shooter;
  // A putt is told apart on a finer scale than a shot through the air.
  const scale = furthest * (strike.clubKind === 'putter' ? 0.5 : 1);
  const alongM = Math.min(
    REACH_SD * distanceM * solved.touch * spread.speedSd,
    scale * (0.4 + 0.06 * distanceM),
  );
  const asideM = Math.min(
    REACH_SD * distanceM * Math.abs(lineSdOf(spread, strike.handed)),
    scale * 0.75 * (0.3 + 0.04 * distanceM),
  );
  const strokes = (move: Move): number => cloud.at(aimAt(origin, move));
  const saves = (to: Move, over: Move): boolean =>
    cloud.dearerInErrors(aimAt(origin, over), aimAt(origin, to)) > BEYOND_LUCK;

  const beyondM = from.beyondM + least(alongM, (by) => strokes({ ...from, beyondM: from.beyondM + by }));
  let along: Move = { beyondM, rightM: from.rightM };
  if (from.rightM !== 0 && Math.abs(from.rightM) < asideM) {
    const straight = { beyondM, rightM: 0 };
    if (!saves(along, straight)) along = straight;
  }
  const turned: Move = {
    beyondM,
    rightM: along.rightM + least(asideM, (by) => strokes({ beyondM, rightM: along.rightM + by })),
  };
  return turned.rightM !== along.rightM && saves(turned, along) ? turned : along;
}

/** Where values are least from -reach to reach, told from places apart and a parabola through the least of them. */
function least(reach: number, of: (by: number) => number): number {
  const apart = reach / LOOKS;
  let fewest = of(0);
  let at = 0;
  for (let i = -LOOKS; i <= LOOKS; i += 1) {
    const here = i === 0 ? fewest : of(i * apart);
    if (here < fewest) {
      fewest = here;
      at = i;
    }
  }
  const foot = at * apart;
  if (Math.abs(at) === LOOKS) return foot;
  const [before, after] = [of(foot - apart), of(foot + apart)];
  const bend = before - 2 * fewest + after;
  return bend > 1e-9 ? foot + (0.5 * apart * (before - after)) / bend : foot;
}
