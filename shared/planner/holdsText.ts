import type { SwitchPoints } from './switchPoints.ts';

/** How far a choice holds, to stand beside it: "every flag and any usual day"; null where that cannot be said. */
export function holdsText({
  whatIfs,
  holdsThroughout,
  holdsForEveryFlag,
}: Pick<SwitchPoints, 'whatIfs' | 'holdsThroughout' | 'holdsForEveryFlag'>): string | null {
  const flags = whatIfs.some(({ what }) => what === 'flag');
  if (holdsThroughout) return flags ? 'every flag and any usual day' : 'any usual day';
  return flags && holdsForEveryFlag ? 'every flag on a day like this' : null;
}
