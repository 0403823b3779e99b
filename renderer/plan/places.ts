import { byLabel } from '../../shared/atlas/byLabel.ts';
import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, BallPosition, HoleLocation } from '../../shared/atlas/records.ts';
import { flagsOfHole } from '../../shared/planner/sceneRecords.ts';
import { ballsShown } from '../store/ballGroups.ts';
import type { Choice } from './Chooser.tsx';

/** The balls of a hole that are shown, by label. */
export const ballChoices = (
  document: AtlasDocument,
  holeId: string,
  group: string | null,
): readonly Choice[] =>
  ballsShown(
    recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === holeId),
    group,
  )
    .map(choiceOf)
    .toSorted(byLabel);

/** The flags of a hole in play, by label. */
export const flagChoices = (document: AtlasDocument, holeId: string): readonly Choice[] =>
  flagsOfHole(document, holeId).map(choiceOf).toSorted(byLabel);

const kindWords = { ballPosition: 'Ball', holeLocation: 'Flag' } as const;

function choiceOf({ type, id, label, name }: BallPosition | HoleLocation): Choice {
  return { id, label, name: `${kindWords[type]} ${label}${name === '' ? '' : `, ${name}`}` };
}
