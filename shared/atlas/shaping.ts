import type { LonLat, PlanePoint, PlanePolygon, PlaneRing } from '../geometry/points.ts';
import { collarOf } from '../geometry/collar.ts';
import { splitPolygon } from '../geometry/split.ts';
import { differenceOf, unionOf } from '../geometry/topology.ts';
import { turnedAbout } from '../geometry/turn.ts';
import { kindWords } from '../words/coverWords.ts';
import type { AreaKind } from '../words/vocabulary.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { frameOf, planePolygon } from './document.ts';
import { type Edit, putRecords, removeRecords, together } from './edits.ts';
import { mapPositions, withBearings } from './moving.ts';
import type { AreaRecord, AtlasDocument, AtlasRecord, LineRecord, RecordId, Rings } from './records.ts';

/** Gives ids to the records an edit makes. */
export type NewId = () => RecordId;

/** "the green", or the name in quotes: as an annotation says it. */
export const areaWords = ({ kind, name }: Pick<AreaRecord, 'kind' | 'name'>): string =>
  name === '' ? `the ${kindWords[kind]}` : `“${name}”`;

export function ringsOf(document: AtlasDocument, polygon: PlanePolygon): Rings {
  const { toLonLat } = frameOf(document);
  return polygon.map((ring) => ring.map(toLonLat));
}

const polygonOf = (document: AtlasDocument, area: AreaRecord): PlanePolygon =>
  planePolygon(frameOf(document), area.rings);

/** An area of this outline with nothing known of it but its kind. */
export function newArea(document: AtlasDocument, id: RecordId, kind: AreaKind, ring: PlaneRing): AreaRecord {
  return {
    type: 'area',
    id,
    kind,
    name: '',
    rings: ringsOf(document, [ring]),
    lipHeightM: null,
    treeHeightM: null,
    canopyBaseM: null,
  };
}

/** Takes a shape out of an area: a hole where it lies inside, a bite where it crosses the edge, several areas where it parts it. */
export function cutArea(document: AtlasDocument, area: AreaRecord, shape: PlaneRing, newId: NewId): Edit {
  const parts = differenceOf(polygonOf(document, area), [shape]);
  const annotation = `cut ${areaWords(area)}`;
  if (parts.length === 0)
    throw new InputProblem(
      'nothing-left',
      'Nothing would be left of it.',
      '',
      'Draw a smaller shape, or take the whole area out.',
    );
  return putRecords(annotation, pieces(document, area, parts, newId));
}

/** Parts an area along a line, each part with all that the area had but its name beyond the first. */
export function splitArea(
  document: AtlasDocument,
  area: AreaRecord,
  line: readonly PlanePoint[],
  newId: NewId,
): Edit {
  const parts = splitPolygon(polygonOf(document, area), line);
  if (parts.length < 2)
    throw new InputProblem(
      'line-does-not-part',
      'The line does not part the area.',
      '',
      'Draw it from one edge across to another.',
    );
  return putRecords(`parted ${areaWords(area)}`, pieces(document, area, parts, newId));
}

/** One area of several that touch or overlap; it keeps the first one's name and measures. */
export function joinAreas(document: AtlasDocument, areas: readonly AreaRecord[]): Edit {
  const [first, ...others] = areas;
  if (first === undefined || others.length === 0) throw new RangeError('joining takes two areas');
  const [whole, apart] = unionOf(areas.map((area) => polygonOf(document, area)));
  if (whole === undefined || apart !== undefined)
    throw new InputProblem(
      'areas-apart',
      'The areas do not touch.',
      '',
      'Move or draw one so that they overlap.',
    );
  const annotation = `joined ${areaWords(first)} with ${others.length === 1 ? 'its neighbour' : 'its neighbours'}`;
  return together(annotation, [
    putRecords(annotation, [{ ...first, rings: ringsOf(document, whole) }]),
    removeRecords(
      annotation,
      others.map(({ id }) => id),
    ),
  ]);
}

/** A band of a stated width round an area, such as the fringe of a green. */
export function addCollar(
  document: AtlasDocument,
  area: AreaRecord,
  kind: AreaKind,
  widthM: number,
  id: RecordId,
): Edit {
  const band = collarOf(polygonOf(document, area), widthM);
  if (band === null)
    throw new InputProblem(
      'no-collar',
      'No band of that width fits.',
      'Width',
      'Give a width above nothing, such as 1 yd.',
    );
  return putRecords(`put a ${kindWords[kind]} round ${areaWords(area)}`, [
    { ...newArea(document, id, kind, []), rings: ringsOf(document, band) },
  ]);
}

/** Turns records clockwise about a point; readings of slope turn with their ground. */
export function turnRecords(
  annotation: string,
  ids: Iterable<RecordId>,
  centre: PlanePoint,
  turnDeg: number,
): Edit {
  const wanted = [...ids];
  return {
    annotation,
    apply: (document) => {
      const frame = frameOf(document);
      const turned = wanted.flatMap((id): AtlasRecord[] => {
        const record = document.records.get(id);
        if (record === undefined || record.type === 'atlas') return [];
        const moved = mapPositions(record, (at) =>
          frame.toLonLat(turnedAbout(frame.toPlane(at), centre, turnDeg)),
        );
        return [withBearings(moved, (bearingDeg) => (((bearingDeg + turnDeg) % 360) + 360) % 360)];
      });
      return putRecords(annotation, turned).apply(document);
    },
  };
}

/** A record with corners: the rings of an area, or a line as its only ring. */
export type Cornered = AreaRecord | LineRecord;

const corneredWords = (record: Cornered): string =>
  record.type === 'area' ? areaWords(record) : `the ${lineWords[record.kind]}`;

/** Kinds of line inside a sentence. */
export const lineWords: Readonly<Record<LineRecord['kind'], string>> = {
  tierEdge: 'tier edge',
  ridge: 'ridge',
  contour: 'contour',
  wall: 'wall',
};

/** Moves one corner; `ring` 0 is the outline or line, the others are holes. */
export function moveCorner(
  document: AtlasDocument,
  record: Cornered,
  ring: number,
  corner: number,
  to: PlanePoint,
): Edit {
  return withCorners(document, record, ring, `moved a corner of ${corneredWords(record)}`, (corners) =>
    corners.map((at, i) => (i === corner ? to : at)),
  );
}

/** Puts a corner after corner `after` of a ring. */
export function insertCorner(
  document: AtlasDocument,
  record: Cornered,
  ring: number,
  after: number,
  at: PlanePoint,
): Edit {
  return withCorners(document, record, ring, `put a corner in ${corneredWords(record)}`, (corners) =>
    corners.toSpliced(after + 1, 0, at),
  );
}

/** Takes a corner out; a hole left with two corners goes. Throws where the outline or line itself would. */
export function removeCorner(document: AtlasDocument, record: Cornered, ring: number, corner: number): Edit {
  const annotation = `took a corner out of ${corneredWords(record)}`;
  const [least, count] =
    record.type === 'area' ? [3, record.rings[ring]?.length ?? 0] : [2, record.positions.length];
  if (count > least)
    return withCorners(document, record, ring, annotation, (corners) => corners.toSpliced(corner, 1));
  if (ring === 0 || record.type === 'line')
    throw new InputProblem(
      'too-few-corners',
      record.type === 'area' ? 'An outline needs three corners.' : 'A line needs two points.',
      '',
      'Take the whole of it out instead.',
    );
  return putRecords(annotation, [{ ...record, rings: record.rings.filter((_, i) => i !== ring) }]);
}

function withCorners(
  document: AtlasDocument,
  record: Cornered,
  ring: number,
  annotation: string,
  change: (corners: readonly PlanePoint[]) => readonly PlanePoint[],
): Edit {
  const { toPlane, toLonLat } = frameOf(document);
  const changed = (positions: readonly LonLat[]): readonly LonLat[] =>
    change(positions.map(toPlane)).map(toLonLat);
  return putRecords(annotation, [
    record.type === 'area'
      ? { ...record, rings: record.rings.map((corners, i) => (i === ring ? changed(corners) : corners)) }
      : { ...record, positions: changed(record.positions) },
  ]);
}

function pieces(
  document: AtlasDocument,
  area: AreaRecord,
  parts: readonly PlanePolygon[],
  newId: NewId,
): readonly AreaRecord[] {
  return parts.map((part, i) =>
    i === 0
      ? { ...area, rings: ringsOf(document, part) }
      : { ...area, id: newId(), name: '', rings: ringsOf(document, part) },
  );
}
