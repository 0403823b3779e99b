import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import type { BallPosition, ChoiceRecord, HoleLocation } from '../../shared/atlas/records.ts';

/** A ball position or hole location. */
export type Place = BallPosition | HoleLocation;

/** "ball 3" or "flag B". */
export const placeName = ({ type, label }: Place): string =>
  `${type === 'ballPosition' ? 'ball' : 'flag'} ${label}`;

export const movePlace = (place: Place, at: Place['at']): Edit =>
  putRecords(`moved ${placeName(place)}`, [{ ...place, at }]);

/** Whose choice it is, for which ball and flag. */
export type ChoiceFor = Pick<ChoiceRecord, 'ballId' | 'flagId' | 'playerId'>;

/** A player's own choice for a ball and a flag; one that was there gives way, its note stays. */
export function putChoice(known: ChoiceRecord | null, chosen: ChoiceFor, optionId: string): Edit {
  const id = known?.id ?? `choice-${crypto.randomUUID()}`;
  return putRecords('put a shot in the playbook', [
    { type: 'choice', id, ...chosen, optionId, note: known?.note ?? '' },
  ]);
}

export const noteChoice = (choice: ChoiceRecord, note: string): Edit =>
  putRecords('changed a note', [{ ...choice, note }]);

export const takeChoiceOut = ({ id }: ChoiceRecord): Edit =>
  removeRecords('took a shot out of the playbook', [id]);
