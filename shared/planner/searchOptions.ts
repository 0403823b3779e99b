import { slots } from '../ball/slots.ts';
import { length2 } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import type { EffortRules } from './effort.ts';
import { fitsName } from './fitsName.ts';
import type { GivenUp } from './leftOutOf.ts';
import { LAND_EAST, LAND_NORTH, REST_EAST, REST_NORTH, type Shooter } from './shooter.ts';
import type { Situation } from './situation.ts';
import { type Aim, shifted, type Solved, solveAim } from './solveAim.ts';
import { type Improved, improveAim, lookAt } from './trial.ts';
import { wayOut } from './wayOut.ts';

/** A candidate with the aim that the search found for it. */
export interface Found {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly aim: Aim;
  readonly missM: number;
}

export interface SearchResult {
  readonly found: readonly Found[];
  readonly givenUp: readonly GivenUp[];
}

interface Look {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly solved: Solved;
  readonly improved: Improved;
}

/** The first target is this far past the hole; the search moves it. */
const FIRST_PAST_M = 0.3;
/** One that starts this far behind is not even looked at. */
const HOPELESS_AT_ONCE_STROKES = 0.5;
/** A perfect strike that ends farther than this from its target (plus a share of the way) cannot play the shot. */
const MISS_M = 1.5;
const MISS_SHARE = 0.3;
/** With fewer options than this that get there, the others are tried as ways out. */
const FEW_LOOKS = 3;
/** A way out this much dearer than the best is none. */
const NO_WAY_OUT_STROKES = 0.3;
/** How far the search may stretch a technique's name. */
const NAME_SLACK = 0.12;

/**
 * A first look at every candidate, then the search in full for those still in the running. Yields the share
 * that is done.
 */
export function* searchOptions(
  situation: Situation,
  candidates: readonly Candidate[],
  rules: EffortRules,
): Generator<number, SearchResult> {
  const { tools, ball, flag, cover, quality, bearing, distanceM, searchShots } = situation;
  const { field } = tools;
  const target = shifted(ball, flag, FIRST_PAST_M, 0);
  const looks: Look[] = [];
  const blocked: { readonly candidate: Candidate; readonly shooter: Shooter; readonly solved: Solved }[] = [];
  const givenUp: GivenUp[] = [];
  const misnamed: { readonly candidate: Candidate; readonly shooter: Shooter; readonly solved: Solved }[] =
    [];
  let best = Infinity;
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
  for (const [index, candidate] of candidates.entries()) {
    const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing);
    const solved = solveAim(shooter, ball, target, 'rest');
    if (solved.missM > MISS_M + MISS_SHARE * distanceM) {
      blocked.push({ candidate, shooter, solved });
    } else if (!named(candidate, shooter, solved, 0)) {
      misnamed.push({ candidate, shooter, solved });
    } else {
      const improved = rules.looksAround
        ? improveAim(
            shooter,
            field,
            solved,
            distanceM,
            searchShots,
            null,
            best + HOPELESS_AT_ONCE_STROKES,
            rules.lookShots,
          )
        : lookAt(shooter, field, solved, searchShots, rules.lookShots);
      best = Math.min(best, improved.strokes);
      looks.push({ candidate, shooter, solved, improved });
    }
    yield (0.5 * (index + 1)) / candidates.length;
  }
  if (looks.length === 0) {
    // One club, perhaps: the shot is played whatever it is called.
    for (const { candidate, shooter, solved } of misnamed.splice(0)) {
      const improved = improveAim(shooter, field, solved, distanceM, searchShots, null);
      best = Math.min(best, improved.strokes);
      looks.push({ candidate, shooter, solved, improved });
    }
  }
  for (const { candidate } of misnamed) givenUp.push({ candidate, kind: 'otherName' });
  const few = looks.length < FEW_LOOKS;
  const outs: Look[] = [];
  for (const { candidate, shooter, solved } of blocked) {
    if (!few) {
      givenUp.push({ candidate, kind: whyBlocked(shooter, solved) });
      continue;
    }
    // Little gets there: a face or a crown in the way. What gets out best is still worth a look.
    const out = wayOut(shooter, field, solved, bearing, searchShots);
    const improved = improveAim(shooter, field, out, distanceM, searchShots, null);
    best = Math.min(best, improved.strokes);
    outs.push({ candidate, shooter, solved: out, improved });
  }
  for (const look of outs) {
    if (look.improved.strokes <= best + NO_WAY_OUT_STROKES) looks.push(look);
    else givenUp.push({ candidate: look.candidate, kind: whyBlocked(look.shooter, look.solved) });
  }
  const found: Found[] = [];
  for (const [index, { candidate, shooter, solved, improved }] of looks.entries()) {
    const hopeless = improved.strokes > best + rules.hopelessStrokes;
    if (hopeless && !rules.keepsAll) continue;
    const { aim: moved } = hopeless
      ? improved
      : improveAim(
          shooter,
          field,
          solved,
          distanceM,
          searchShots,
          rules.looksAround ? improved : null,
          Infinity,
          rules.searchShots,
        );
    const aim = named(candidate, shooter, moved, NAME_SLACK) ? moved : solved;
    found.push({ candidate, shooter, aim, missM: solved.missM });
    yield 0.5 + (0.5 * (index + 1)) / looks.length;
  }
  return { found, givenUp };
}

/** Why the strike as meant does not get there. */
function whyBlocked(shooter: Shooter, aim: Aim): GivenUp['kind'] {
  shooter.perfect(aim.clubheadMps, aim.bearing);
  return shooter.out[slots.obstructed] === 1 ? 'blocked' : 'cannotStop';
}
