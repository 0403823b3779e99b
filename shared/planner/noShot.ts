import { InputProblem } from '../words/inputProblem.ts';
import type { Technique } from '../words/vocabulary.ts';
import { shotName } from './optionName.ts';
import type { Scene } from './scene.ts';

/** Why there is nothing to plan for a ball, and what to do about it. `marked` as `availability` gives it. */
export function noShot(
  { hole, player }: Scene,
  ballLabel: string,
  marked: readonly Technique[],
): InputProblem {
  const place = `Hole ${hole.label}, ball ${ballLabel}`;
  if (player.bag.length === 0) {
    return new InputProblem(
      'empty-bag',
      `${player.name} has no club for this shot.`,
      place,
      'Add a club to the bag.',
    );
  }
  if (marked.length === 0) {
    return new InputProblem(
      'no-shot',
      `no club of ${player.name} gets a ball out of this lie.`,
      place,
      'Add a wedge to the bag.',
    );
  }
  const names = marked.map((technique) => `the ${shotName(technique)}`);
  const last = names.pop() ?? '';
  return new InputProblem(
    'no-shot-of-ones-own',
    `${player.name} has marked as not mine all that this lie and bag leave: ${names.length === 0 ? last : `${names.join(', ')} and ${last}`}.`,
    place,
    `Mark ${names.length === 0 ? 'it' : 'one of them'} as mine under Player, or put in the bag what another shot needs.`,
  );
}
