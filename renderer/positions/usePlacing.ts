import { useEffect, useState } from 'react';
import { putRecords, type Edit } from '../../shared/atlas/edits.ts';
import type { BallPosition, ConditionsRecord, HoleLocation } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { nextLetter, nextNumber } from '../store/labels.ts';

export type Placing = 'ballPosition' | 'holeLocation' | 'approach' | null;

interface PlacingInput {
  readonly holeId: string;
  readonly balls: readonly BallPosition[];
  readonly flags: readonly HoleLocation[];
  readonly day: ConditionsRecord | undefined;
  /** The group that alone is shown: what is pinned belongs to it. */
  readonly group: string | null;
  readonly edit: (edit: Edit) => void;
  /** Takes where approaches are played from, which is no part of the document. */
  readonly mark: (at: LonLat) => void;
  readonly choose: (id: string, kind: 'ball' | 'flag') => void;
}

interface PlacingNow {
  /** What the next click on the ground puts there. */
  readonly placing: Placing;
  readonly setPlacing: (placing: Placing) => void;
  readonly put: (at: LonLat) => void;
  /** Stands flags with the next letters, in one step, on a pin sheet where the day is played to one or one is named. */
  readonly stand: (places: readonly LonLat[], annotation: (labels: string) => string, sheet?: string) => void;
  /** Pins balls with the next numbers, in one step. */
  readonly pin: (places: readonly LonLat[], name: string, group: string | null) => void;
}

/** Puts new balls and flags down: by the next click, or where something else has found a place. */
export function usePlacing(input: PlacingInput): PlacingNow {
  const { holeId, balls, flags, day, group, edit, mark, choose } = input;
  const [placing, setPlacing] = useState<Placing>(null);
  useEffect(() => {
    if (placing === null) return undefined;
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') setPlacing(null);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [placing]);

  const newBalls = (places: readonly LonLat[], name: string, of: string | null): readonly BallPosition[] => {
    const made: BallPosition[] = [];
    for (const at of places)
      made.push({
        type: 'ballPosition',
        id: crypto.randomUUID(),
        holeId,
        label: nextNumber([...balls, ...made]),
        name,
        at,
        lie: 'clean',
        coverOverride: null,
        ...(of !== null && { group: of }),
      });
    return made;
  };
  const stand: PlacingNow['stand'] = (places, annotation, named) => {
    // A flag stood on a day with a pin sheet would not be seen without being on it.
    const sheet = day?.sheet ?? named;
    const made: HoleLocation[] = [];
    for (const at of places)
      made.push({
        type: 'holeLocation',
        id: crypto.randomUUID(),
        holeId,
        label: nextLetter([...flags, ...made]),
        name: '',
        at,
        ...(sheet !== undefined && { sheet }),
      });
    const [first] = made;
    if (first === undefined) return;
    edit(putRecords(annotation(made.map(({ label }) => label).join(', ')), made));
    choose(first.id, 'flag');
  };
  return {
    placing,
    setPlacing,
    stand,
    put: (at) => {
      if (placing === 'approach') mark(at);
      else if (placing === 'holeLocation') stand([at], (label) => `stood flag ${label}`);
      else if (placing === 'ballPosition') {
        const [ball] = newBalls([at], '', group);
        if (ball !== undefined) {
          edit(putRecords(`pinned ball ${ball.label}`, [ball]));
          choose(ball.id, 'ball');
        }
      }
      setPlacing(null);
    },
    pin: (places, name, of) => {
      const made = newBalls(places, name, of);
      edit(putRecords(`pinned balls ${made.map(({ label }) => label).join(', ')} at likely misses`, made));
    },
  };
}
