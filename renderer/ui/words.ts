import type { LieQuality } from '../../shared/words/vocabulary.ts';

/** How the ball lies, inside a sentence. */
export const lieWords: Readonly<Record<LieQuality, string>> = {
  clean: 'clean lie',
  sittingUp: 'sitting up',
  sittingDown: 'sitting down',
  buried: 'buried',
  divot: 'in a divot',
};

/** "Hole 4, Long Withy"; a station's label may be a word of its own. */
export function holeWords(label: string, name: string): string {
  const place = /^\d+$/.test(label) ? `Hole ${label}` : label;
  return name === '' ? place : `${place}, ${name}`;
}
