import type { Candidate, LeftOut } from '../player/availability.ts';
import { techniques } from '../words/vocabulary.ts';
import type { Plan } from './plan.ts';

/** A candidate that the search gave up. */
export interface GivenUp {
  readonly candidate: Candidate;
  /** A reason kind of reasonText: it cannot get or stop there, something stands in its way, or it goes by another name. */
  readonly kind: 'cannotReach' | 'cannotStop' | 'blocked' | 'otherName';
}

/**
 * What the plan leaves out: one line for a technique that is out with every club, otherwise one for each club
 * that something keeps from the flag. A club that only goes by another name is not spoken of.
 */
export function leftOutOf(
  notTried: readonly LeftOut[],
  givenUp: readonly GivenUp[],
  candidates: readonly Candidate[],
): Plan['leftOut'] {
  const lines: Plan['leftOut'][number][] = notTried.map(({ technique, kind }) => ({
    id: technique,
    reason: { kind, values: { technique } },
  }));
  for (const technique of techniques) {
    const out = givenUp.filter(({ candidate }) => candidate.technique === technique);
    const tried = candidates.filter((candidate) => candidate.technique === technique);
    const kinds = new Set(out.map(({ kind }) => kind));
    const [kind] = kinds;
    if (kind !== undefined && kinds.size === 1 && out.length === tried.length) {
      lines.push({ id: technique, reason: { kind, values: { technique } } });
      continue;
    }
    for (const { candidate, kind: why } of out) {
      if (why === 'otherName') continue;
      const values = { technique, clubName: candidate.club.name };
      lines.push({ id: `${technique}:${candidate.club.id}`, reason: { kind: why, values } });
    }
  }
  return lines;
}
