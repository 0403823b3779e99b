import { recordsOf } from '../../shared/atlas/document.ts';
import { applyChanges } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument, ChoiceRecord } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';

/** A ball position or hole location elsewhere. */
export function movePlace(document: AtlasDocument, id: string, at: LonLat): AtlasDocument {
  const record = document.records.get(id);
  if (record?.type !== 'ballPosition' && record?.type !== 'holeLocation') return document;
  return applyChanges(document, [{ id, record: { ...record, at } }]);
}

export function choiceFor(document: AtlasDocument, ballId: string, flagId: string): ChoiceRecord | null {
  return (
    recordsOf(document, 'choice').find((choice) => choice.ballId === ballId && choice.flagId === flagId) ??
    null
  );
}

/** The person's own choice for a ball and a flag; one that was there gives way, its note stays. */
export function putChoice(
  document: AtlasDocument,
  ballId: string,
  flagId: string,
  optionId: string,
): AtlasDocument {
  const known = choiceFor(document, ballId, flagId);
  const id = known?.id ?? `choice-${ballId}-${flagId}`;
  const record = { type: 'choice', id, ballId, flagId, optionId, note: known?.note ?? '' } as const;
  return applyChanges(document, [{ id, record }]);
}

export function takeChoiceOut(document: AtlasDocument, ballId: string, flagId: string): AtlasDocument {
  const known = choiceFor(document, ballId, flagId);
  return known === null ? document : applyChanges(document, [{ id: known.id, record: null }]);
}
