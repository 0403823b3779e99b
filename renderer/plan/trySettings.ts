import type { AtlasDocument, PlayerLevel } from '../../shared/atlas/records.ts';
import { recordsOf } from '../../shared/atlas/document.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { conditionsOf } from '../../shared/planner/conditionsOf.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { TryRequest } from '../../shared/planner/tryShot.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import type { Cover, LieQuality, Moisture, Technique } from '../../shared/words/vocabulary.ts';

/** What somebody tries, where it differs from the plan. */
export interface TrySettings {
  readonly technique: Technique;
  readonly clubId: string;
  readonly landing: PlanePoint | null;
  /** Steps of size and aim away from the plan's. */
  readonly sizePct: number;
  readonly aimShiftM: number;
  readonly cover: Cover | null;
  readonly lie: LieQuality | null;
  readonly moisture: Moisture | null;
  /** Another day of the atlas. */
  readonly dayId: string | null;
  readonly level: PlayerLevel | null;
}

/** The option as planned: nothing changed yet. */
export const tryFrom = ({ technique, clubId }: Pick<PlanOption, 'technique' | 'clubId'>): TrySettings => ({
  technique,
  clubId,
  landing: null,
  sizePct: 0,
  aimShiftM: 0,
  cover: null,
  lie: null,
  moisture: null,
  dayId: null,
  level: null,
});

export function tryRequest(
  settings: TrySettings,
  document: AtlasDocument,
  pair: { readonly ballId: string; readonly flagId: string },
  advisedId: string,
): TryRequest {
  const { technique, clubId, landing, sizePct, aimShiftM, cover, lie, moisture, dayId, level } = settings;
  const day = recordsOf(document, 'conditions').find(({ id }) => id === dayId);
  return {
    ...pair,
    // As many as of a plan, and the same: what is tried with nothing changed reads as it does there.
    shots: USUAL_SHOTS,
    seed: USUAL_SEED,
    technique,
    clubId,
    landing,
    sizeFactor: 1 + sizePct / 100,
    aimShiftM,
    advisedId,
    ...(cover !== null && { cover }),
    ...(lie !== null && { lie }),
    ...(moisture !== null && { moisture }),
    ...(day !== undefined && { conditions: conditionsOf(day) }),
    ...(level !== null && { level }),
  };
}
