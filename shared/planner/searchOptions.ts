import { type Candidate } from '../player/availability.ts';
import type { EffortRules } from './effort.ts';
import type { Shooter } from './shooter.ts';
import type { Situation } from './situation.ts';
import { type Aim, shifted, type Solved, solveAim } from './solveAim.ts';
import { type Improved, improveAim, meanStrokes } from './trial.ts';
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
  /** Candidates that no size brings near the flag. */
  readonly unreachable: readonly Candidate[];
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
  let best = Infinity;
  for (const [index, candidate] of candidates.entries()) {
    const shooter = tools.shooterFrom(candidate, ball, cover, quality, bearing);
    const solved = solveAim(shooter, ball, target, 'rest');
    if (solved.missM > MISS_M + MISS_SHARE * distanceM) {
      blocked.push({ candidate, shooter, solved });
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
        : {
            aim: solved,
            strokes: meanStrokes(shooter, field, solved, searchShots, rules.lookShots),
            beyondM: 0,
            rightM: 0,
          };
      best = Math.min(best, improved.strokes);
      looks.push({ candidate, shooter, solved, improved });
    }
    yield (0.5 * (index + 1)) / candidates.length;
  }
  const unreachable = blocked.map(({ candidate }) => candidate);
  if (looks.length < FEW_LOOKS) {
    // Little gets there: a face or a crown in the way. What gets out best is still worth a look.
    unreachable.length = 0;
    for (const { candidate, shooter, solved } of blocked) {
      const out = wayOut(shooter, field, solved, bearing, searchShots);
      const improved = improveAim(
        shooter,
        field,
        out,
        distanceM,
        searchShots,
        null,
        Infinity,
        rules.lookShots,
      );
      best = Math.min(best, improved.strokes);
      looks.push({ candidate, shooter, solved: out, improved });
    }
  }
  const found: Found[] = [];
  for (const [index, { candidate, shooter, solved, improved }] of looks.entries()) {
    const hopeless = improved.strokes > best + rules.hopelessStrokes;
    if (hopeless && !rules.keepsAll) continue;
    const { aim } = hopeless
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
    found.push({ candidate, shooter, aim, missM: solved.missM });
    yield 0.5 + (0.5 * (index + 1)) / looks.length;
  }
  return { found, unreachable };
}
