import { InputProblem } from '../words/inputProblem.ts';
import type { Scene } from './scene.ts';

/** Throws InputProblem where there is no flag to plan to. */
export function needFlags({ hole, flags }: Pick<Scene, 'hole' | 'flags'>): void {
  if (flags.length === 0)
    throw new InputProblem(
      'hole-without-flag',
      'no hole location is set.',
      `Hole ${hole.label}`,
      'Set at least one flag on the green.',
    );
}
