import { byLabel } from '../../shared/atlas/byLabel.ts';
import { holesInOrder, recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument, RecordOf } from '../../shared/atlas/records.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';

interface Labelled {
  readonly id: string;
  readonly label: string;
}

/** The record that a person named by its id or by the label on its tag. Throws InputProblem listing what there is. */
function named<T extends Labelled>(records: readonly T[], given: string, what: string, place: string): T {
  const found =
    records.find(({ id }) => id === given) ??
    records.find(({ label }) => label === given) ??
    records.find(({ label }) => label.toLowerCase() === given.toLowerCase());
  if (found !== undefined) return found;
  const labels = records.map(({ label }) => label);
  throw new InputProblem(
    `unknown-${what}`,
    `there is no ${what} "${given}".`,
    place,
    labels.length === 0 ? `Add one first: there are none.` : `Choose one of: ${labels.join(', ')}.`,
  );
}

export const findHole = (document: AtlasDocument, given: string): RecordOf<'hole'> =>
  named(holesInOrder(document), given, 'hole', '');

export const findBall = (
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
  given: string,
): RecordOf<'ballPosition'> => named(ballsOf(document, hole), given, 'ball', `Hole ${hole.label}`);

export const findFlag = (
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
  given: string,
): RecordOf<'holeLocation'> => named(flagsOf(document, hole), given, 'flag', `Hole ${hole.label}`);

/** Conditions by their name or id. */
export const findDay = (document: AtlasDocument, given: string): RecordOf<'conditions'> =>
  calledSo(recordsOf(document, 'conditions'), given, 'day');

export const findPlayer = (document: AtlasDocument, given: string): RecordOf<'player'> =>
  calledSo(recordsOf(document, 'player'), given, 'player');

function calledSo<T extends { readonly id: string; readonly name: string }>(
  records: readonly T[],
  given: string,
  what: string,
): T {
  const labelled = records.map((record) => ({ id: record.id, label: record.name, record }));
  return named(labelled, given, what, '').record;
}

export const ballsOf = (
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
): readonly RecordOf<'ballPosition'>[] =>
  recordsOf(document, 'ballPosition')
    .filter(({ holeId }) => holeId === hole.id)
    .toSorted(byLabel);

export const flagsOf = (
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
): readonly RecordOf<'holeLocation'>[] =>
  recordsOf(document, 'holeLocation')
    .filter(({ holeId }) => holeId === hole.id)
    .toSorted(byLabel);
