import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, ChoiceRecord, PlayerRecord } from '../../shared/atlas/records.ts';
import { choiceOf } from '../../shared/playbook/surveyLines.ts';
import { noteChoice, putChoice, takeChoiceOut } from '../store/edits.ts';
import { useSteady } from '../ui/useSteady.ts';

/** What a player takes into the playbook from a ball to a flag, and how it is changed. */
export interface Pick {
  readonly picked: ChoiceRecord | null;
  readonly pick: (optionId: string) => void;
  readonly unpick: () => void;
  readonly setNote: (note: string) => void;
}

export function usePick(
  document: AtlasDocument,
  player: PlayerRecord | undefined,
  ballId: string | null,
  flagId: string | null,
  edit: (edit: Edit) => void,
): Pick {
  const pair =
    ballId === null || flagId === null || player === undefined
      ? null
      : { ballId, flagId, playerId: player.id };
  const picked = pair === null ? null : (choiceOf(document, pair.playerId, pair) ?? null);
  const pick = useSteady((optionId: string): void => {
    if (pair !== null) edit(putChoice(picked, pair, optionId));
  });
  const unpick = useSteady((): void => {
    if (picked !== null) edit(takeChoiceOut(picked));
  });
  const setNote = useSteady((note: string): void => {
    if (picked !== null) edit(noteChoice(picked, note));
  });
  return { picked, pick, unpick, setNote };
}
