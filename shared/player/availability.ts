import type { Club, PlayerRecord } from '../atlas/records.ts';
import { type Cover, type LieQuality, type Technique, techniques } from '../words/vocabulary.ts';
import { meetsBallFirst } from './strikeSpread.ts';
import { techniqueRules } from './technique.ts';

/** A technique with a club, to be solved. */
export interface Candidate {
  readonly technique: Technique;
  readonly club: Club;
}

/** What was not considered, and why: `kind` is a reason kind of reasonText. */
export interface LeftOut {
  readonly technique: Technique;
  readonly kind: 'notInRepertoire' | 'noClub' | 'lieForbids';
}

export interface Availability {
  readonly candidates: readonly Candidate[];
  readonly leftOut: readonly LeftOut[];
}

/** True where the technique can be tried from this lie at all (common practice). */
export function lieAllows(technique: Technique, cover: Cover, quality: LieQuality): boolean {
  const sand = cover === 'bunker';
  const buried = quality === 'buried';
  switch (technique) {
    case 'splash':
      return sand && !buried;
    case 'explosion':
      return sand && (buried || quality === 'sittingDown' || quality === 'divot');
    case 'putt':
      return !sand && !buried && cover !== 'heavyRough' && quality !== 'divot' && quality !== 'sittingDown';
    case 'bumpAndRun':
      return !sand && cover !== 'green' && !buried && (cover !== 'heavyRough' || quality === 'sittingUp');
    case 'chip':
    case 'pitch':
      // From sand only where the ball can be met first.
      return cover !== 'green' && !buried && (!sand || quality === 'clean' || quality === 'sittingUp');
    case 'highSoft':
      return !sand && cover !== 'green' && !buried && quality !== 'divot' && cover !== 'path';
  }
}

/**
 * Every technique x club worth solving for a player and a lie, simplest technique first, clubs by rising loft.
 * Where nothing in the bag fits the usual lofts of any technique, the nearest club is taken, so that one club
 * only still has an answer; an empty list means that there is no club at all.
 */
export function availability(
  player: PlayerRecord,
  cover: Cover,
  quality: LieQuality,
  distanceM: number,
): Availability {
  const candidates: Candidate[] = [];
  const leftOut: LeftOut[] = [];
  const bag = [...player.bag].sort((a, b) => a.loftDeg - b.loftDeg || (a.id < b.id ? -1 : 1));
  const lofted = bag.filter((club) => club.kind !== 'putter');
  const fitting: Technique[] = [];
  for (const technique of techniques) {
    if (!lieAllows(technique, cover, quality)) {
      if (technique === 'putt' && cover !== 'bunker') leftOut.push({ technique, kind: 'lieForbids' });
      continue;
    }
    if (player.repertoire[technique] === 'notMine') {
      leftOut.push({ technique, kind: 'notInRepertoire' });
      continue;
    }
    const rule = techniqueRules[technique];
    if (distanceM < rule.minDistanceM && technique !== 'splash') continue;
    fitting.push(technique);
    const [low, high] = rule.loftsDeg;
    const clubs = rule.putter
      ? bag.filter((club) => club.kind === 'putter')
      : lofted.filter((club) => club.loftDeg >= low && club.loftDeg <= high);
    if (clubs.length === 0) leftOut.push({ technique, kind: 'noClub' });
    for (const club of clubs) candidates.push({ technique, club });
  }
  if (candidates.length > 0) return { candidates, leftOut };
  return { candidates: lastResort(bag, lofted, fitting, cover), leftOut };
}

function lastResort(
  bag: readonly Club[],
  lofted: readonly Club[],
  fitting: readonly Technique[],
  cover: Cover,
): readonly Candidate[] {
  const most = lofted[lofted.length - 1];
  if (most === undefined) {
    const putter = bag[0];
    return putter === undefined ? [] : [{ technique: 'putt', club: putter }];
  }
  // The technique whose usual lofts come nearest to the club; sand first asks for the most lofted.
  let best: Candidate | null = null;
  let least = Infinity;
  for (const technique of fitting.length > 0 ? fitting : (['chip'] as const)) {
    const rule = techniqueRules[technique];
    if (rule.putter || (cover === 'bunker' && meetsBallFirst(technique))) continue;
    for (const club of cover === 'bunker' ? [most] : lofted) {
      const [low, high] = rule.loftsDeg;
      const off = Math.max(low - club.loftDeg, club.loftDeg - high, 0);
      if (off < least) {
        least = off;
        best = { technique, club };
      }
    }
  }
  return [
    best ?? {
      technique: cover === 'green' ? 'bumpAndRun' : 'chip',
      club: cover === 'green' ? (lofted[0] ?? most) : most,
    },
  ];
}
