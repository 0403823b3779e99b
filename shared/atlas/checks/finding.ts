import type { LonLat } from '../../geometry/points.ts';
import type { Edit } from '../edits.ts';
import type { RecordId } from '../records.ts';

/** `error`: the hole cannot be planned or the file not be trusted. `warning`: look at it. `note`: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** Something to look at, with where it is and what to do. */
export interface Finding {
  /** The same while the thing itself is: the check's name and the ids concerned. */
  readonly id: string;
  readonly check: string;
  readonly severity: Severity;
  readonly recordIds: readonly RecordId[];
  /** In words: "Hole 4, bunker Front left". */
  readonly place: string;
  readonly at: LonLat | null;
  /** One sentence. */
  readonly what: string;
  /** One sentence. */
  readonly remedy: string;
  /** An edit that puts it right, where one sensible edit does; its annotation serves as the button's hint. */
  readonly mend: Edit | null;
}

export function finding(
  check: string,
  severity: Severity,
  recordIds: readonly RecordId[],
  rest: Pick<Finding, 'place' | 'at' | 'what' | 'remedy'> & { readonly mend?: Edit | null },
): Finding {
  return {
    id: `${check}:${recordIds.join(',')}`,
    check,
    severity,
    recordIds,
    place: rest.place,
    at: rest.at,
    what: rest.what,
    remedy: rest.remedy,
    mend: rest.mend ?? null,
  };
}
