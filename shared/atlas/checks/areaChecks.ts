import { distanceM, nearestOnRing, polygonAreaM2 } from '../../geometry/ring.ts';
import { overlapOf } from '../../geometry/topology.ts';
import { distance, withUnit } from '../../units/format.ts';
import { compareIds } from '../document.ts';
import { putRecords, removeRecords } from '../edits.ts';
import { isShapeOf, type PlaneChange, type PlaneIndex } from '../planeIndex.ts';
import { planeShape } from '../planeShape.ts';
import { named, SLIVER_M2, trim, untangle } from './areaMends.ts';
import { finding, type Finding } from './finding.ts';
import { KeptFindings } from './keptFindings.ts';
import { areaPlace, type AreaShape, areaShape, type Survey, told } from './survey.ts';

/** Overlaps smaller than this are a shared edge traced twice. */
const OVERLAP_M2 = 0.05;
/** What a bunker is planned with until its lip is measured. */
const USUAL_LIP_M = 0.3;
/** Outlines this close everywhere are one thing traced or imported twice. */
const SAME_M = 0.05;
const LEAST_GAP_M = 2;
const TIMES_LONGER = 3;

/**
 * What is wrong with an area by itself, or with it beside another. What is found stays until the area changes, or one that
 * meets it; of two the one of the later id is told of.
 */
export class AreaChecks {
  readonly #kept = new KeptFindings();

  /** Takes note of what has changed; the index stands at the document after it. */
  note(index: PlaneIndex, changes: readonly PlaneChange[]): void {
    for (const { before, after } of changes)
      for (const shape of [before, after]) {
        if (shape === null || !isShapeOf(shape, 'area')) continue;
        this.#kept.due(shape.record.id);
        if (changes.length > index.of('area').length) continue;
        for (const { record } of index.areasIn(shape.box))
          if (record.kind === shape.record.kind) this.#kept.due(record.id);
      }
  }

  *check(survey: Survey): Generator<undefined, readonly Finding[]> {
    yield* this.#kept.look((id) => {
      const record = survey.document.records.get(id);
      if (record?.type !== 'area') return [];
      const area = areaShape(planeShape(survey.document, record));
      return [
        ...crossing(survey, area),
        ...overlappingGreens(survey, area),
        ...missingMeasures(survey, area),
        ...sliver(survey, area),
        ...unclosed(survey, area),
        ...duplicate(survey, area),
      ];
    });
    return this.#kept.inOrder(survey.index.of('area'), (found, shape) =>
      told(survey, found, areaShape(shape).centre),
    );
  }
}

function crossing(survey: Survey, area: AreaShape): readonly Finding[] {
  if (area.crossing === null) return [];
  const { record } = area;
  const { ring, crossing: found } = area.crossing;
  return [
    finding('self-crossing', 'error', [record.id], {
      place: areaPlace(record),
      at: survey.frame.toLonLat(found.at),
      what: 'The outline crosses itself.',
      remedy: 'Move a corner there, or keep the largest part.',
      mend: untangle(area, ring),
    }),
  ];
}

/** Areas of the same kind that meet this one and have an earlier id. */
const earlier = (survey: Survey, { record, box }: AreaShape): readonly AreaShape[] =>
  survey.index
    .areasIn(box)
    .filter(({ record: other }) => other.kind === record.kind && other.id < record.id)
    .map(areaShape)
    .sort((a, b) => compareIds(a.record, b.record));

function overlappingGreens(survey: Survey, second: AreaShape): readonly Finding[] {
  if (second.record.kind !== 'green' || second.crossing !== null) return [];
  return earlier(survey, second).flatMap((first) => {
    if (first.crossing !== null) return [];
    const shared = overlapOf(first.polygon, second.polygon);
    if (shared.reduce((sum, part) => sum + polygonAreaM2(part), 0) < OVERLAP_M2) return [];
    return [
      finding('overlapping-greens', 'error', [first.record.id, second.record.id], {
        place: areaPlace(second.record),
        at: survey.frame.toLonLat(second.centre),
        what: `The green overlaps ${named(first.record)}.`,
        remedy: 'Trim one of them, or join them into one green.',
        mend: trim(second, first),
      }),
    ];
  });
}

function duplicate(survey: Survey, area: AreaShape): readonly Finding[] {
  const twin = earlier(survey, area).find((other) => sameOutline(area, other));
  if (twin === undefined) return [];
  return [
    finding('duplicate-area', 'warning', [twin.record.id, area.record.id], {
      place: areaPlace(area.record),
      at: survey.frame.toLonLat(area.centre),
      what: `It is the same outline as ${twin.record.name === '' ? twin.record.id : twin.record.name}.`,
      remedy: 'Take one of them out.',
      mend: removeRecords('took out an area traced twice', [area.record.id]),
    }),
  ];
}

function sameOutline(a: AreaShape, b: AreaShape): boolean {
  if (distanceM(a.centre, b.centre) > SAME_M) return false;
  const [left = [], right = []] = [a.polygon[0], b.polygon[0]];
  return (
    left.every((point) => nearestOnRing(point, right).distanceM < SAME_M) &&
    right.every((point) => nearestOnRing(point, left).distanceM < SAME_M)
  );
}

function missingMeasures(survey: Survey, area: AreaShape): readonly Finding[] {
  const { record, centre } = area;
  const place = areaPlace(record);
  const at = survey.frame.toLonLat(centre);
  if (record.kind === 'bunker' && record.lipHeightM === null)
    return [
      finding('bunker-without-lip', 'warning', [record.id], {
        place,
        at,
        what: 'The lip has no height.',
        remedy: 'Measure it from the sand; 1 ft is taken until then.',
        mend: putRecords(`gave ${named(record)} a lip of 1 ft`, [{ ...record, lipHeightM: USUAL_LIP_M }]),
      }),
    ];
  if (record.kind === 'tree' && record.treeHeightM === null)
    return [
      finding('tree-without-height', 'warning', [record.id], {
        place,
        at,
        what: 'The tree has no height.',
        remedy: 'Give its height and the underside of its crown.',
      }),
    ];
  if (record.treeHeightM !== null && (record.canopyBaseM ?? 0) >= record.treeHeightM)
    return [
      finding('crown-above-tree', 'error', [record.id], {
        place,
        at,
        what: 'The underside of the crown is as high as the tree.',
        remedy: 'Correct one of the two heights.',
      }),
    ];
  return [];
}

function sliver(survey: Survey, area: AreaShape): readonly Finding[] {
  if (area.crossing !== null || polygonAreaM2(area.polygon) >= SLIVER_M2) return [];
  return [
    finding('sliver', 'warning', [area.record.id], {
      place: areaPlace(area.record),
      at: survey.frame.toLonLat(area.centre),
      what: 'The area is smaller than a hand.',
      remedy: 'Take it out if it is a slip.',
      mend: removeRecords(`took out ${named(area.record)}`, [area.record.id]),
    }),
  ];
}

/** An outline that somebody left open is closed by its last side: far longer than any other, and straight. */
function unclosed(survey: Survey, { record, polygon, crossing }: AreaShape): readonly Finding[] {
  const [outer = []] = polygon;
  const [first] = outer;
  const last = outer.at(-1);
  if (first === undefined || last === undefined || outer.length < 8 || crossing !== null) return [];
  const gapM = distanceM(last, first);
  const others = outer.slice(1).map((at, i) => distanceM(outer[i] ?? at, at));
  if (gapM < LEAST_GAP_M || gapM < TIMES_LONGER * Math.max(...others)) return [];
  return [
    finding('unclosed-outline', 'note', [record.id], {
      place: areaPlace(record),
      at: survey.frame.toLonLat(last),
      what: `The outline is closed by one straight side of ${withUnit(distance(gapM, survey.units))}; no other is a third as long.`,
      remedy: 'Put corners in along it where the edge bends.',
    }),
  ];
}
