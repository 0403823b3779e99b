import type { AreaKind } from '../../words/vocabulary.ts';

/** In order: "greenside bunker" is a bunker, "light rough left of the green" rough. */
const words: readonly (readonly [RegExp, AreaKind])[] = [
  [/\b(bunkers?|sand)\b/i, 'bunker'],
  [/\b(out[ -]of[ -]bounds|oob)\b/i, 'outOfBounds'],
  [/\b(penalty|water|hazard|pond|lake|stream|creek|burn|ditch|river)\b/i, 'penaltyArea'],
  [/\b(heavy|deep|thick|long) (rough|grass)\b/i, 'heavyRough'],
  [/\b(light )?rough\b/i, 'lightRough'],
  [/\b(trees?|wood|woods|copse|hedge)\b/i, 'tree'],
  [/\b(path|track|road)\b/i, 'path'],
  [/\b(tees?|teeing)\b/i, 'tee'],
  [/\b(fringe|collar)\b/i, 'fringe'],
  [/\b(approach|apron)\b/i, 'approach'],
  [/\bfairway\b/i, 'fairway'],
  [/\b(bare|waste|dirt)\b/i, 'bare'],
  [/\bgreen\b/i, 'green'],
];

/** The kind of ground a name speaks of, or null. */
export function namedKind(name: string): AreaKind | null {
  return words.find(([pattern]) => pattern.test(name))?.[1] ?? null;
}
