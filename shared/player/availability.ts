import type { Club, PlayerRecord } from '../atlas/records.ts';
import { type Cover, type LieQuality, type Technique, techniques } from '../words/vocabulary.ts';
import { meetsBallFirst } from './strikeSpread.ts';
import { techniqueRules } from './technique.ts';

/** A technique with a club, to be solved. */
export interface Candidate {
  readonly technique: Technique;
  readonly club: Club;
  /** All that is left, and no proper shot: the club does not suit the technique, or the technique the lie. */
  readonly makeshift?: 'club' | 'lie';
}

/** What was not considered, and why: `kind` is a reason kind of reasonText. */
export interface LeftOut {
  readonly technique: Technique;
  readonly kind: 'notInRepertoire' | 'noClub' | 'lieForbids';
}

export interface Availability {
  readonly candidates: readonly Candidate[];
  readonly leftOut: readonly LeftOut[];
  /** Where there is no candidate: the shots that there would be, were they not marked as not the player's. */
  readonly marked: readonly Technique[];
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
 * Every technique x club worth solving for a player and a lie, simplest technique first, clubs by rising loft. Where that
 * is nothing, what is shorter than a shot is usually tried for; then the club nearest to the usual lofts; then what can be
 * done at all from a lie that allows no shot. What the player has marked as not theirs is never among it: where only that
 * would be left, there is no candidate.
 */
export function availability(
  player: PlayerRecord,
  cover: Cover,
  quality: LieQuality,
  distanceM: number,
): Availability {
  const bag = [...player.bag].sort((a, b) => a.loftDeg - b.loftDeg || (a.id < b.id ? -1 : 1));
  const mine = (technique: Technique): boolean => player.repertoire[technique] !== 'notMine';
  const allowed = techniques.filter((technique) => lieAllows(technique, cover, quality));
  const ordinary = allowed.filter(
    (technique) => technique === 'splash' || distanceM >= techniqueRules[technique].minDistanceM,
  );
  const leftOut = (candidates: readonly Candidate[]): LeftOut[] =>
    techniques.flatMap((technique): LeftOut[] => {
      if (candidates.some((candidate) => candidate.technique === technique)) return [];
      if (!allowed.includes(technique))
        return technique === 'putt' && cover !== 'bunker' ? [{ technique, kind: 'lieForbids' }] : [];
      if (!mine(technique)) return [{ technique, kind: 'notInRepertoire' }];
      return suiting(bag, technique).length === 0 && ordinary.includes(technique)
        ? [{ technique, kind: 'noClub' }]
        : [];
    });
  const own = allowed.filter(mine);
  const anyway = whateverTheLie(bag, cover, quality);
  const ways: readonly (readonly Candidate[])[] = [
    withSuitingClubs(bag, ordinary.filter(mine)),
    withSuitingClubs(bag, own),
    withSuitingClubs(bag, allowed),
    withNearestClub(bag, own, cover),
    withNearestClub(bag, allowed, cover),
    anyway.filter(({ technique }) => mine(technique)),
    anyway,
  ];
  const left = ways.find((way) => way.length > 0) ?? [];
  const candidates = left.filter(({ technique }) => mine(technique));
  const marked = candidates.length > 0 ? [] : [...new Set(left.map(({ technique }) => technique))];
  return { candidates, leftOut: leftOut(candidates), marked };
}

/** Clubs usually used for a technique. */
function suiting(bag: readonly Club[], technique: Technique): readonly Club[] {
  const { putter, loftsDeg } = techniqueRules[technique];
  const [low, high] = loftsDeg;
  return putter
    ? bag.filter(isPutter)
    : bag.filter((club) => !isPutter(club) && club.loftDeg >= low && club.loftDeg <= high);
}

const isPutter = ({ kind }: Club): boolean => kind === 'putter';

const withSuitingClubs = (bag: readonly Club[], shots: readonly Technique[]): readonly Candidate[] =>
  shots.flatMap((technique) => suiting(bag, technique).map((club) => ({ technique, club })));

/** The technique whose usual lofts come nearest to a club of the bag; sand first asks for the most lofted. */
function withNearestClub(
  bag: readonly Club[],
  shots: readonly Technique[],
  cover: Cover,
): readonly Candidate[] {
  const sand = cover === 'bunker';
  const lofted = bag.filter((club) => !isPutter(club)).slice(sand ? -1 : 0);
  let best: Candidate | null = null;
  let least = Infinity;
  for (const technique of shots) {
    const { putter, loftsDeg } = techniqueRules[technique];
    const [low, high] = loftsDeg;
    if (putter || (sand && meetsBallFirst(technique))) continue;
    for (const club of lofted) {
      const off = Math.max(low - club.loftDeg, club.loftDeg - high, 0);
      if (off >= least) continue;
      least = off;
      best = { technique, club, makeshift: 'club' };
    }
  }
  return best === null ? [] : [best];
}

/**
 * What can be done from a lie that allows no shot with this bag: an iron or the putter on a green, otherwise a steep blow
 * with a wedge, or a putter where it can get at the ball.
 */
function whateverTheLie(bag: readonly Club[], cover: Cover, quality: LieQuality): readonly Candidate[] {
  const lofted = bag.filter((club) => !isPutter(club));
  const wedges = suiting(bag, 'pitch');
  const blows = wedges.length > 0 ? wedges : lofted.slice(-1);
  const technique = cover === 'green' ? 'bumpAndRun' : 'pitch';
  const shots = (cover === 'green' ? lofted.slice(0, 1) : blows).map(
    (club) => ({ technique, club }) as const,
  );
  const putts =
    quality === 'buried' || (shots.length > 0 && cover !== 'green')
      ? []
      : bag.filter(isPutter).map((club) => ({ technique: 'putt', club }) as const);
  return [...putts, ...shots].map((candidate) => ({ ...candidate, makeshift: 'lie' }));
}
