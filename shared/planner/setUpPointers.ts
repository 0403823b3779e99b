import { techniqueRules } from '../player/technique.ts';
import type { Technique } from '../words/vocabulary.ts';

/**
 * How a technique is set up: ball position, weight, hands and face, a sentence each, with the sides of the player's hand.
 * Common practice, not measured.
 */
export function setUpPointers(technique: Technique, handed: 'right' | 'left'): readonly string[] {
  const front = handed === 'right' ? 'left' : 'right';
  return techniqueRules[technique].setUp.map((line) =>
    line
      .replace('the front foot', `the front (${front}) foot`)
      .replace('Face open', `Face open (turned ${handed})`)
      .replace('stance a little open', `stance a little open (turned ${front})`),
  );
}
