import { byLabel } from '../../shared/atlas/byLabel.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { ballsShown } from './ballGroups.ts';
import type { Pair } from './planCache.ts';

/** The other balls to the same flag and the other flags from the same ball, by how many arrow keys away they are. */
export function ahead(
  { balls, flags }: Scene,
  { ballId, flagId }: Pair,
  ballGroup: string | null,
): readonly Pair[] {
  const shown = ballsShown(
    balls.map(({ record }) => record),
    ballGroup,
  );
  return [
    ...away(shown, ballId).map(({ id, steps }) => ({ ballId: id, flagId, steps })),
    ...away(
      flags.map(({ record }) => record),
      flagId,
    ).map(({ id, steps }) => ({ ballId, flagId: id, steps: steps + 0.5 })),
  ].toSorted((a, b) => a.steps - b.steps);
}

function away(
  records: readonly { readonly id: string; readonly label: string }[],
  from: string,
): readonly { readonly id: string; readonly steps: number }[] {
  const row = records.toSorted(byLabel);
  const at = row.findIndex(({ id }) => id === from);
  return row.map(({ id }, index) => ({ id, steps: Math.abs(index - at) }));
}
