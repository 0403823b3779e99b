import { useEffect, useState } from 'react';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { techniqueName } from '../../shared/planner/optionName.ts';
import { surroundsAt } from '../../shared/planner/surroundsAt.ts';
import type { SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';
import { strokes } from '../../shared/units/format.ts';
import type { MapControls } from '../map/PlateMap.tsx';

export interface ReadBall {
  readonly label: string;
  readonly at: PlanePoint;
}

interface SurroundsReadingProps {
  readonly layer: SurroundsLayer;
  readonly ball: ReadBall | null;
  readonly flagLabels: ReadonlyMap<string, string>;
  readonly controls: Pick<MapControls, 'watchPointer'> | null;
}

/** What the map of the surrounds says under the pointer; while that is elsewhere, at the chosen ball. */
export function SurroundsReading(props: SurroundsReadingProps): React.JSX.Element | null {
  const { layer, ball, flagLabels, controls } = props;
  const [pointer, setPointer] = useState<PlanePoint | null>(null);
  useEffect(() => controls?.watchPointer(setPointer), [controls]);
  const at = pointer ?? ball?.at ?? null;
  if (at === null) return null;
  return (
    <p className="surrounds-reading">
      <span>{pointer === null ? `At ball ${ball?.label ?? ''}` : 'Under the pointer'}</span>{' '}
      {readingWords(layer, at, flagLabels)}
    </p>
  );
}

/** "Chip, 2.31 strokes"; "depends on the flag: Putt to A and B, Chip to C"; where the map ends or play does, that. */
function readingWords(
  layer: SurroundsLayer,
  at: PlanePoint,
  flagLabels: ReadonlyMap<string, string>,
): string {
  const reading = surroundsAt(layer.map, at);
  if (reading === null) return 'outside this map, or out of play';
  const cost = `${strokes(reading.strokes)} strokes`;
  if (layer.by === 'strokes') return cost;
  if (reading.simple === null) return `nothing plain, ${cost}`;
  if (reading.simple !== 'depends') return `${techniqueName(reading.simple)}, ${cost}`;
  const flagsOf = new Map<string, string[]>();
  for (const { flagId, simple } of reading.perFlag) {
    const name = simple === null ? 'nothing plain' : techniqueName(simple);
    flagsOf.set(name, [...(flagsOf.get(name) ?? []), flagLabels.get(flagId) ?? '']);
  }
  const each = [...flagsOf].map(([name, labels]) => `${name} to ${labels.join(' and ')}`);
  return `depends on the flag: ${each.join(', ')}`;
}
