import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Hand } from './hand.ts';
import type { HandState } from './handState.ts';
import type { Thing } from './planeShapes.ts';

/** What the panel of a thing held is given; `T` narrows the thing to one type. */
export interface HeldProps<T extends Thing = Thing> {
  readonly hand: Hand;
  readonly state: HandState;
  readonly thing: T;
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
}
