import type { BallPosition } from '../../shared/atlas/records.ts';

/** The groups of some balls by name, in order. */
export function groupNames(balls: readonly Pick<BallPosition, 'group'>[]): readonly string[] {
  const names = new Set(balls.flatMap(({ group }) => group ?? []));
  return [...names].toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));
}

/** The balls of a group; all of them where none of these is in it. */
export function ballsShown<T extends Pick<BallPosition, 'group'>>(
  balls: readonly T[],
  group: string | null,
): readonly T[] {
  const inGroup = group === null ? [] : balls.filter((ball) => ball.group === group);
  return inGroup.length === 0 ? balls : inGroup;
}
