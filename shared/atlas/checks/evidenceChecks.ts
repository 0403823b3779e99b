import { boxAbout, widened } from '../../geometry/box.ts';
import type { PlanePoint } from '../../geometry/points.ts';
import { type Box, distanceM, pointInPolygon } from '../../geometry/ring.ts';
import { smallHeight, spotHeight, withUnit } from '../../units/format.ts';
import type { UnitsPreference } from '../../units/preference.ts';
import { compareIds } from '../document.ts';
import { removeRecords } from '../edits.ts';
import { isShapeOf, type PlaneChange, type PlaneIndex } from '../planeIndex.ts';
import { planeShape } from '../planeShape.ts';
import type { SpotHeight } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { KeptFindings } from './keptFindings.ts';
import { type Survey, told } from './survey.ts';

/** Neighbours are looked for this far, and so many at most are used. */
const REACH_M = 10;
const NEIGHBOURS = 10;
const FEWEST = 6;
/**
 * A height is doubted when it misses its neighbours' plane by this much and by so many times what they themselves do. A
 * green is mown smooth; banks and dips round it bend by tens of centimetres between readings, so that only blunders show.
 */
const LEAST_MISS_ON_GREEN_M = 0.08;
const LEAST_MISS_M = 0.8;
const TIMES_USUAL = 4;
const SAME_PLACE_M = 0.05;

/** After more changes than this all readings are gone through: an import, or an atlas just opened. */
const MANY_CHANGES = 200;

interface Reading {
  readonly record: SpotHeight;
  readonly at: PlanePoint;
  readonly onGreen: boolean;
}

/**
 * Spot heights that disagree with their neighbours or were read twice. What is found stays until something within reach of
 * a reading changes: a height there, or the outline of a green.
 */
export class EvidenceChecks {
  readonly #kept = new KeptFindings();

  /** Takes note of what has changed; the index stands at the document after it. */
  note(index: PlaneIndex, changes: readonly PlaneChange[]): void {
    const boxes: Box[] = [];
    for (const { before, after } of changes) {
      if (before !== null && after === null) this.#kept.due(before.record.id);
      for (const shape of [before, after])
        if (
          shape !== null &&
          (isShapeOf(shape, 'spotHeight') || (isShapeOf(shape, 'area') && shape.record.kind === 'green'))
        )
          // Its neighbours look at it, and theirs at them.
          boxes.push(widened(shape.box, 2 * REACH_M));
    }
    const due =
      boxes.length > MANY_CHANGES
        ? index.of('spotHeight')
        : boxes.flatMap((box) => index.pointsIn(box).filter((shape) => isShapeOf(shape, 'spotHeight')));
    for (const { record } of due) this.#kept.due(record.id);
  }

  *check(survey: Survey): Generator<undefined, readonly Finding[]> {
    const around = surroundings(survey);
    yield* this.#kept.look((id) => {
      const record = survey.document.records.get(id);
      if (record?.type !== 'spotHeight') return [];
      const reading = around.reading(record);
      return [...samePlace(around, reading, survey.units), ...disagreement(around, reading, survey.units)];
    });
    return this.#kept.inOrder(survey.index.of('spotHeight'), (found, { points: [at] }) =>
      at === undefined ? found : told(survey, found, at),
    );
  }
}

/** The readings within reach of a place, each with whether it lies on a green, worked out once for a whole check. */
interface Surroundings {
  readonly reading: (record: SpotHeight) => Reading;
  readonly within: (at: PlanePoint) => readonly Reading[];
}

function surroundings({ document, index }: Survey): Surroundings {
  const known = new Map<SpotHeight, Reading>();
  const reading = (record: SpotHeight): Reading => {
    const before = known.get(record);
    if (before !== undefined) return before;
    const [at] = planeShape(document, record).points;
    if (at === undefined) throw new RangeError('a spot height without a place');
    const onGreen = index
      .areasIn(boxAbout(at, 0))
      .some(({ record: area, polygon }) => area.kind === 'green' && pointInPolygon(at, polygon));
    const made = { record, at, onGreen };
    known.set(record, made);
    return made;
  };
  return {
    reading,
    within: (at) =>
      index
        .pointsIn(boxAbout(at, REACH_M))
        .flatMap((shape) => (isShapeOf(shape, 'spotHeight') ? [reading(shape.record)] : [])),
  };
}

function disagreement(around: Surroundings, reading: Reading, units: UnitsPreference): readonly Finding[] {
  const miss = missOfPlane(reading, nearest(around, reading));
  const least = reading.onGreen ? LEAST_MISS_ON_GREEN_M : LEAST_MISS_M;
  if (miss === null || Math.abs(miss) < least) return [];
  // Their own misses are worked out without this one, which would spoil them all.
  const usualMisses = nearest(around, reading)
    .map((other) => missOfPlane(other, nearest(around, other, reading)))
    .filter((value) => value !== null)
    .map((value) => Math.abs(value))
    .sort((a, b) => a - b);
  const usual = usualMisses[Math.floor(usualMisses.length / 2)] ?? 0;
  if (Math.abs(miss) < TIMES_USUAL * (usual + reading.record.accuracyM)) return [];
  const { record } = reading;
  return [
    finding('height-disagrees', 'warning', [record.id], {
      place: placeOf(record, units),
      at: record.at,
      what: `It stands ${withUnit(smallHeight(Math.abs(miss), units))} ${miss > 0 ? 'above' : 'below'} its neighbours.`,
      remedy: 'Measure it again, or take it out.',
      mend: removeRecords('took out a doubtful height', [record.id]),
    }),
  ];
}

/** Two readings at one place are reported once, on the later id. */
function samePlace(
  around: Surroundings,
  { record, at }: Reading,
  units: UnitsPreference,
): readonly Finding[] {
  const twin = around
    .within(at)
    .filter((other) => other.record.id < record.id && distanceM(other.at, at) < SAME_PLACE_M)
    .toSorted((a, b) => compareIds(a.record, b.record))[0];
  if (twin === undefined) return [];
  const apart = Math.abs(twin.record.heightM - record.heightM);
  return [
    finding('duplicate-height', apart > 0.03 ? 'warning' : 'note', [twin.record.id, record.id], {
      place: placeOf(record, units),
      at: record.at,
      what:
        apart > 0.03
          ? `Two heights at one place differ by ${withUnit(smallHeight(apart, units))}.`
          : 'The height was read twice at one place.',
      remedy: 'Keep the one you trust.',
      mend: removeRecords('took out a height read twice', [record.id]),
    }),
  ];
}

const placeOf = ({ heightM, id }: SpotHeight, units: UnitsPreference): string =>
  `spot height ${spotHeight(heightM, units).text} (${id})`;

/** Height less that of the plane through the neighbours, least squares weighted by 1/distance^2; null where none fits. */
function missOfPlane({ record, at }: Reading, neighbours: readonly Reading[]): number | null {
  if (neighbours.length < FEWEST) return null;
  let [w, wx, wy, wz, wxx, wxy, wyy, wxz, wyz] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (const other of neighbours) {
    const x = other.at.eastM - at.eastM;
    const y = other.at.northM - at.northM;
    const z = other.record.heightM - record.heightM;
    const weight = 1 / (x * x + y * y + 0.25);
    w += weight;
    wx += weight * x;
    wy += weight * y;
    wz += weight * z;
    wxx += weight * x * x;
    wxy += weight * x * y;
    wyy += weight * y * y;
    wxz += weight * x * z;
    wyz += weight * y * z;
  }
  const mx = wx / w;
  const my = wy / w;
  const spread = (wxx + wyy) / w;
  // Neighbours all on one side would have to be carried on past their end.
  if (mx * mx + my * my > 0.4 * spread) return null;
  const mz = wz / w;
  const xx = wxx / w - mx * mx;
  const xy = wxy / w - mx * my;
  const yy = wyy / w - my * my;
  const determinant = xx * yy - xy * xy;
  // Neighbours in a row say nothing across it.
  if (determinant < 0.02 * xx * yy) return null;
  const xz = wxz / w - mx * mz;
  const yz = wyz / w - my * mz;
  const slopeX = (xz * yy - yz * xy) / determinant;
  const slopeY = (yz * xx - xz * xy) / determinant;
  return slopeX * mx + slopeY * my - mz;
}

function nearest(around: Surroundings, reading: Reading, without: Reading = reading): readonly Reading[] {
  return around
    .within(reading.at)
    .filter((other) => other !== reading && other !== without && other.onGreen === reading.onGreen)
    .map((other) => ({ other, distance: distanceM(other.at, reading.at) }))
    .filter(({ distance }) => distance < REACH_M && distance > SAME_PLACE_M)
    .sort((a, b) => a.distance - b.distance || compareIds(a.other.record, b.other.record))
    .slice(0, NEIGHBOURS)
    .map(({ other }) => other);
}
