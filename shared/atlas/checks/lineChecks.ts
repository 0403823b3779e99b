import { boxAbout, widened } from '../../geometry/box.ts';
import type { PlanePoint } from '../../geometry/points.ts';
import { distanceM, lineLengthM, nearestOnLine } from '../../geometry/ring.ts';
import { compareIds } from '../document.ts';
import { putRecords, removeRecords } from '../edits.ts';
import { isShapeOf, type PlaneChange, type PlaneIndex } from '../planeIndex.ts';
import { type PlaneShape, planeShape } from '../planeShape.ts';
import type { LineRecord } from '../records.ts';
import { feetAndInches } from '../../units/format.ts';
import { lineWords } from '../shaping.ts';
import { finding, type Finding } from './finding.ts';
import { KeptFindings } from './keptFindings.ts';
import { type Survey, told } from './survey.ts';

/** Lines this close everywhere are one thing drawn or imported twice. */
const SAME_M = 0.05;
/** Ends nearer to each other than this part of the line's length were meant to meet. */
const MEETING_SHARE = 0.05;
const CLOSED_M = 0.005;

/** Lines drawn twice, and lines that go all the way round but for a gap. What is found stays until one of them changes. */
export class LineChecks {
  readonly #kept = new KeptFindings();

  /** Takes note of what has changed; the index stands at the document after it. */
  note(index: PlaneIndex, changes: readonly PlaneChange[]): void {
    for (const { before, after } of changes)
      for (const shape of [before, after]) {
        if (shape === null || !isShapeOf(shape, 'line')) continue;
        this.#kept.due(shape.record.id);
        for (const { record } of index.linesIn(widened(shape.box, SAME_M))) this.#kept.due(record.id);
      }
  }

  *check(survey: Survey): Generator<undefined, readonly Finding[]> {
    yield* this.#kept.look((id) => {
      const record = survey.document.records.get(id);
      if (record?.type !== 'line') return [];
      const line = planeShape(survey.document, record);
      return [...twice(survey, line), ...open(survey, line)];
    });
    return this.#kept.inOrder(survey.index.of('line'), (found, { points: [at] }) =>
      at === undefined ? found : told(survey, found, at),
    );
  }
}

const linePlace = ({ kind, name, id }: LineRecord): string => `${lineWords[kind]} ${name === '' ? id : name}`;

const along = (points: readonly PlanePoint[], line: readonly PlanePoint[]): boolean =>
  points.every((point) => nearestOnLine(point, line).distanceM < SAME_M);

function twice(
  { index, frame }: Survey,
  { record, points, box }: PlaneShape<LineRecord>,
): readonly Finding[] {
  const [twin] = index
    .linesIn(widened(box, SAME_M))
    .filter(({ record: other }) => other.kind === record.kind && other.id < record.id)
    .filter((other) => along(points, other.points) && along(other.points, points))
    .toSorted((a, b) => compareIds(a.record, b.record));
  const [at] = points;
  if (twin === undefined || at === undefined) return [];
  return [
    finding('duplicate-line', 'warning', [twin.record.id, record.id], {
      place: linePlace(record),
      at: frame.toLonLat(at),
      what: `It is the same line as ${twin.record.name === '' ? twin.record.id : twin.record.name}.`,
      remedy: 'Take one of them out.',
      mend: removeRecords(`took out a ${lineWords[record.kind]} drawn twice`, [record.id]),
    }),
  ];
}

function open(
  { index, frame, units }: Survey,
  { record, points }: PlaneShape<LineRecord>,
): readonly Finding[] {
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined || points.length < 4) return [];
  const gapM = distanceM(first, last);
  if (gapM <= CLOSED_M || gapM > MEETING_SHARE * lineLengthM(points)) return [];
  // One that goes on from there as another line is whole already.
  const goesOn = [first, last].some((end) =>
    index
      .linesIn(boxAbout(end, SAME_M))
      .some((other) => other.record.id !== record.id && nearestOnLine(end, other.points).distanceM < SAME_M),
  );
  if (goesOn) return [];
  const words = lineWords[record.kind];
  return [
    finding('unclosed-line', 'note', [record.id], {
      place: linePlace(record),
      at: frame.toLonLat(first),
      what: `The ${words} goes all the way round but for ${feetAndInches(gapM, units)}.`,
      remedy: 'Close it if its ends should meet.',
      mend: putRecords(`closed a ${words}`, [
        { ...record, positions: [...record.positions, ...record.positions.slice(0, 1)] },
      ]),
    }),
  ];
}
