import { widened } from '../../geometry/box.ts';
import { distanceM } from '../../geometry/ring.ts';
import { compareIds } from '../document.ts';
import { removeRecords } from '../edits.ts';
import type { PlaneChange, PlaneIndex, PointRecord } from '../planeIndex.ts';
import { type PlaneShape, planeShape } from '../planeShape.ts';
import type { AtlasRecord, RecordOf } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { KeptFindings } from './keptFindings.ts';
import { holeName, type Survey, told } from './survey.ts';

/** Two things of a kind this close are one, put down or imported twice. */
const SAME_M = 0.05;

const types = ['holeLocation', 'ballPosition', 'landmark', 'slopeReading'] as const;
type Placed = RecordOf<(typeof types)[number]>;

const isPlaced = (record: AtlasRecord): record is Placed =>
  (types as readonly string[]).includes(record.type);

/** Flags, balls, landmarks and slopes put down twice at one place. Spot heights are looked at with the evidence. */
export class PlaceChecks {
  readonly #kept = new KeptFindings();

  /** Takes note of what has changed; the index stands at the document after it. */
  note(index: PlaneIndex, changes: readonly PlaneChange[]): void {
    for (const { before, after } of changes)
      for (const shape of [before, after]) {
        if (shape === null || !isPlaced(shape.record)) continue;
        this.#kept.due(shape.record.id);
        for (const { record } of index.pointsIn(widened(shape.box, SAME_M)))
          if (isPlaced(record)) this.#kept.due(record.id);
      }
  }

  *check(survey: Survey): Generator<undefined, readonly Finding[]> {
    yield* this.#kept.look((id) => {
      const record = survey.document.records.get(id);
      return record === undefined || !isPlaced(record) ? [] : twice(survey, record);
    });
    return types.flatMap((type) =>
      this.#kept.inOrder<Placed>(survey.index.of(type), (found, { record, points: [at] }) =>
        'holeId' in record || at === undefined ? inHole(survey, found, record) : told(survey, found, at),
      ),
    );
  }
}

function inHole({ document }: Survey, found: Finding, record: Placed): Finding {
  const hole = 'holeId' in record ? document.records.get(record.holeId) : undefined;
  return hole?.type === 'hole' ? { ...found, place: `${holeName(document, hole)}, ${found.place}` } : found;
}

/** Whether two things at one place say the same: balls in different lies, and flags of different days, do not. */
function saysTheSame(a: Placed, b: PointRecord): boolean {
  if (a.type === 'ballPosition')
    return (
      b.type === 'ballPosition' &&
      a.holeId === b.holeId &&
      a.lie === b.lie &&
      a.coverOverride === b.coverOverride &&
      a.moistureOverride === b.moistureOverride &&
      a.group === b.group
    );
  if (a.type === 'holeLocation')
    return b.type === 'holeLocation' && a.holeId === b.holeId && a.sheet === b.sheet;
  return a.type === b.type;
}

function twice({ document, index }: Survey, record: Placed): readonly Finding[] {
  const shape: PlaneShape<Placed> = planeShape(document, record);
  const [at] = shape.points;
  if (at === undefined) return [];
  const [twin] = index
    .pointsIn(widened(shape.box, SAME_M))
    .filter(({ record: other, points: [place] }) => {
      const earlier = other.id < record.id && saysTheSame(record, other);
      return earlier && place !== undefined && distanceM(at, place) < SAME_M;
    })
    .toSorted((a, b) => compareIds(a.record, b.record));
  if (twin === undefined) return [];
  const words = { holeLocation: 'flag', ballPosition: 'ball', landmark: 'landmark', slopeReading: 'slope' }[
    record.type
  ];
  const label =
    'label' in record ? record.label : 'name' in record && record.name !== '' ? record.name : record.id;
  const other = 'label' in twin.record ? twin.record.label : twin.record.id;
  return [
    finding(`duplicate-${words}`, 'note', [twin.record.id, record.id], {
      place: `${words} ${label}`,
      at: record.at,
      what: `It stands where ${words} ${other} does and says the same.`,
      remedy: 'Take one of them out.',
      mend: removeRecords(`took out a ${words} put down twice`, [record.id]),
    }),
  ];
}
