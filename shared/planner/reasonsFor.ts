import type { Choice, Standing } from './choose.ts';
import type { Reason } from './plan.ts';
import type { Situation } from './situation.ts';

export function reasonsFor(_situation: Situation, _choice: Choice, _standing: Standing): readonly Reason[] {
  return [];
}
