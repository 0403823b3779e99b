import { NOTHING_IN_THE_WAY, slots } from '../ball/slots.ts';
import { length2 } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import type { EffortRules } from './effort.ts';
import { fitsName } from './fitsName.ts';
import type { GivenUp } from './leftOutOf.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import { aimOf, seekAim, type Sought } from './seekAim.ts';
import type { Situation } from './situation.ts';
import { type Aim, shifted, type Solved, solveAim } from './solveAim.ts';
import { wayOut } from './wayOut.ts';

/** A candidate with the aim that the search found for it. */
export interface Found {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly aim: Aim;
  readonly missM: number;
  /** By the shots of the search. */
  readonly strokes: number;
}

export interface SearchResult {
  /** In contention, fewest strokes first. */
  readonly found: readonly Found[];
  /** Aims for the options further behind. */
  readonly others: () => Generator<number, readonly Found[]>;
  readonly givenUp: readonly GivenUp[];
}

interface Unlooked {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly solved: Solved;
}

interface Look extends Sought {
  readonly candidate: Candidate;
}

/** The first target is this far past the hole; the search moves it. */
const FIRST_PAST_M = 0.3;
/** One that starts this far behind is left as it was solved. */
const HOPELESS_AT_ONCE_STROKES = 0.5;
/** A perfect strike that ends farther than this from its target (plus a share of the way) cannot play the shot. */
const MISS_M = 1.5;
const MISS_SHARE = 0.3;
export const missesTarget = (missM: number, distanceM: number): boolean =>
  missM > MISS_M + MISS_SHARE * distanceM;
/** With fewer options than this that get there, the others are tried as ways out. */
const FEW_LOOKS = 3;
/** A way out this much dearer than the best is none. */
const NO_WAY_OUT_STROKES = 0.3;
/** From this share on, a swing is the largest there is. */
export const ALL_OF_IT = 0.99;
/** Parts of the way from the aim as solved to the one found, tried in turn until the shot goes by its name. */
const SHARES_OF_MOVE = [1, 0.8, 0.6, 0.4, 0.2] as const;
/** How far the search may stretch a technique's name. */
const NAME_SLACK = 0.12;

/**
 * A first look at every candidate; those still in the running are walked to a better aim, and those in contention then
 * settled with more shots. Yields the share that is done. What it finds is in contention; `others` goes on to the rest.
 * @param few with fewer options than this that get there, the others are tried as ways out
 */
export function* searchOptions(
  situation: Situation,
  candidates: readonly Candidate[],
  rules: EffortRules,
  few = FEW_LOOKS,
): Generator<number, SearchResult> {
  const { tools, ball, flag, cover, quality, bearing, distanceM, searchShots } = situation;
  const { field } = tools;
  const target = shifted(ball, flag, FIRST_PAST_M, 0);
  const looks: Look[] = [];
  const blocked: Unlooked[] = [];
  const misnamed: Unlooked[] = [];
  const givenUp: GivenUp[] = [];
  const named = ({ technique }: Candidate, shooter: Shooter, aim: Aim, slack: number): boolean => {
    if (technique === 'putt') return true;
    shooter.perfect(aim.clubheadMps, aim.bearing);
    const { out } = shooter;
    const run = length2(
      (out[REST_EAST] ?? 0) - (out[LAND_EAST] ?? 0),
      (out[REST_NORTH] ?? 0) - (out[LAND_NORTH] ?? 0),
    );
    return fitsName(technique, out[slots.carryM] ?? 0, run, slack);
  };
  const { look, walk, firm, settle } = seekAim(field, searchShots, rules);
  const looked = ({ candidate, shooter, solved }: Unlooked): Look => ({
    candidate,
    ...look({ shooter, solved, distanceM }),
  });
  const moved = (one: Look, by: (sought: Sought) => Sought): Look => ({ ...one, ...by(one) });
  const asFound = (one: Look): Found => {
    const { candidate, origin, cloud, move } = one;
    const { shooter, solved } = origin;
    const aims = SHARES_OF_MOVE.map((share) =>
      aimOf({ origin, move: { beyondM: share * move.beyondM, rightM: share * move.rightM } }),
    );
    const aim = aims.find((one) => named(candidate, shooter, one, NAME_SLACK)) ?? solved;
    return { candidate, shooter, aim, missM: solved.missM, strokes: cloud.at(aim) };
  };

  let firstBest = Infinity;
  for (const [index, candidate] of candidates.entries()) {
    const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing);
    const solved = solveAim(shooter, ball, target, 'rest');
    if (missesTarget(solved.missM, distanceM)) {
      blocked.push({ candidate, shooter, solved });
    } else if (!named(candidate, shooter, solved, 0)) {
      misnamed.push({ candidate, shooter, solved });
    } else {
      const one = looked({ candidate, shooter, solved });
      firstBest = Math.min(firstBest, one.strokes);
      looks.push(one);
    }
    yield (0.3 * (index + 1)) / candidates.length;
  }

  let best = Infinity;
  const running: Look[] = [];
  const behind: Look[] = [];
  for (const [index, one] of looks.entries()) {
    if (one.strokes <= firstBest + rules.walkWithinStrokes) {
      const made = moved(one, walk);
      best = Math.min(best, made.strokes);
      running.push(made);
    } else behind.push(one);
    yield 0.3 + (0.3 * (index + 1)) / looks.length;
  }
  if (looks.length === 0) {
    // One club, perhaps: the shot is played whatever it is called.
    for (const one of misnamed.splice(0)) {
      const made = moved(looked(one), walk);
      best = Math.min(best, made.strokes);
      running.push(made);
    }
  }
  for (const { candidate } of misnamed) givenUp.push({ candidate, kind: 'otherName' });
  const outs: Look[] = [];
  for (const { candidate, shooter, solved } of blocked) {
    if (looks.length >= few) {
      givenUp.push({ candidate, kind: whyBlocked(shooter, solved) });
      continue;
    }
    // Little gets there: a face or a crown in the way. What gets out best is still worth a look.
    const elsewhere = wayOut(shooter, field, solved, bearing, searchShots);
    const out = moved(looked({ candidate, shooter, solved: elsewhere }), walk);
    best = Math.min(best, out.strokes);
    outs.push(out);
    yield 0.6;
  }
  for (const one of outs) {
    if (one.strokes <= best + NO_WAY_OUT_STROKES) running.push(one);
    else givenUp.push({ candidate: one.candidate, kind: whyBlocked(one.origin.shooter, one.origin.solved) });
  }

  const contends = ({ strokes }: Look): boolean => strokes <= best + rules.settleWithinStrokes;
  const found: Found[] = [];
  const rest: Look[] = [];
  const close: Look[] = [];
  let least = Infinity;
  for (const one of running) {
    if (rules.settleShots === 0) found.push(asFound(one));
    else if (contends(one)) {
      const firmer = moved(one, firm);
      least = Math.min(least, firmer.strokes);
      close.push(firmer);
    } else rest.push(one);
  }
  for (const [index, one] of close.entries()) {
    if (one.strokes <= least + rules.settleStillWithinStrokes) found.push(asFound(moved(one, settle)));
    else rest.push(one);
    yield 0.6 + (0.4 * (index + 1)) / close.length;
  }
  function* others(): Generator<number, readonly Found[]> {
    const more = rest.map(asFound);
    for (const [index, one] of behind.entries()) {
      if (one.strokes > best + HOPELESS_AT_ONCE_STROKES) more.push(asFound(one));
      else {
        const made = moved(one, walk);
        more.push(
          rules.settleShots > 0 && contends(made) ? asFound(moved(moved(made, firm), settle)) : asFound(made),
        );
      }
      yield (index + 1) / behind.length;
    }
    return more;
  }
  found.sort((a, b) => a.strokes - b.strokes);
  return { found, others, givenUp };
}

/** Why the strike as meant does not get there. */
function whyBlocked(shooter: Shooter, aim: Aim): GivenUp['kind'] {
  shooter.perfect(aim.clubheadMps, aim.bearing);
  if (shooter.out[slots.obstructed] !== NOTHING_IN_THE_WAY) return 'blocked';
  return aim.clubheadMps >= ALL_OF_IT * shooter.fastestMps ? 'cannotReach' : 'cannotStop';
}
