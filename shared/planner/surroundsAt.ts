import type { PlanePoint } from '../geometry/points.ts';
import { type Technique, techniques } from '../words/vocabulary.ts';
import { DEPENDS_ON_FLAG, NOT_REACHED, NOTHING_PLAIN, type SurroundsMap } from './surroundsMap.ts';

/** What a map of the surrounds says of one place. */
export interface SurroundsReading {
  readonly strokes: number;
  /** The plain choice; null where there is none. */
  readonly simple: Technique | 'depends' | null;
  /** Where it depends on the flag: what each flag asks for whose own map reaches here. */
  readonly perFlag: readonly { readonly flagId: string; readonly simple: Technique | null }[];
}

/** The reading at a place; null outside the map and where a ball is out of play. */
export function surroundsAt(map: SurroundsMap, { eastM, northM }: PlanePoint): SurroundsReading | null {
  const column = Math.floor((eastM - map.westM) / map.cellM);
  const row = Math.floor((northM - map.southM) / map.cellM);
  if (column < 0 || row < 0 || column >= map.columns || row >= map.rows) return null;
  const k = row * map.columns + column;
  const strokes = map.strokes[k] ?? NaN;
  if (!Number.isFinite(strokes)) return null;
  const code = map.simple[k] ?? NOTHING_PLAIN;
  const depends = code === DEPENDS_ON_FLAG;
  return {
    strokes,
    simple: depends ? 'depends' : (techniques[code] ?? null),
    perFlag: depends
      ? map.perFlag.flatMap(({ flagId, simple }) =>
          simple[k] === NOT_REACHED
            ? []
            : [{ flagId, simple: techniques[simple[k] ?? NOTHING_PLAIN] ?? null }],
        )
      : [],
  };
}
