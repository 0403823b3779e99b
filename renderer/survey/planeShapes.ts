import { headerOf } from '../../shared/atlas/document.ts';
import { PlaneIndex } from '../../shared/atlas/planeIndex.ts';
import { type PlaneShape, planeShape } from '../../shared/atlas/planeShape.ts';
import type {
  AreaRecord,
  AtlasDocument,
  AtlasRecord,
  LineRecord,
  RecordOf,
} from '../../shared/atlas/records.ts';
import { boxAbout, meets, widened } from '../../shared/geometry/box.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM, nearestOnLine, pointInPolygon, polygonAreaM2 } from '../../shared/geometry/ring.ts';
import { paintOrder } from '../../shared/plate/ground.ts';
import type { TerrainArea } from '../../shared/terrain/terrainInput.ts';

export { meets, type PlaneShape, planeShape, widened };

const indexes = new WeakMap<LonLat, PlaneIndex>();

/** The document's records by type and place. One index follows the document from edit to edit, for as long as its plane stays. */
export function indexOf(document: AtlasDocument): PlaneIndex {
  const { anchor } = headerOf(document);
  const index = indexes.get(anchor) ?? new PlaneIndex();
  indexes.set(anchor, index);
  index.moveTo(document);
  return index;
}

/** Every area of a document, in its own order. */
export const areaShapes = (document: AtlasDocument): readonly PlaneShape<AreaRecord>[] =>
  indexOf(document).of('area');
export const lineShapes = (document: AtlasDocument): readonly PlaneShape<LineRecord>[] =>
  indexOf(document).of('line');

const terrainAreas = new WeakMap<PlaneShape<AreaRecord>, TerrainArea>();

/** The area as terrain and plate know it, the same object for as long as it stays the same. */
export function terrainArea(shape: PlaneShape<AreaRecord>): TerrainArea {
  const before = terrainAreas.get(shape);
  if (before !== undefined) return before;
  const { record, polygon } = shape;
  const { id, kind, name, lipHeightM, treeHeightM, canopyBaseM } = record;
  const made = { id, kind, name, polygon, lipHeightM, treeHeightM, canopyBaseM };
  terrainAreas.set(shape, made);
  return made;
}

const thingTypes = [
  'area',
  'line',
  'spotHeight',
  'slopeReading',
  'holeLocation',
  'ballPosition',
  'landmark',
] as const;

/** A thing a person can take hold of on the plate. */
export type Thing = RecordOf<(typeof thingTypes)[number]>;

export const isThing = (record: AtlasRecord | undefined): record is Thing =>
  record !== undefined && (thingTypes as readonly string[]).includes(record.type);

/** Whether there is anything at all to take hold of. */
export const hasThings = (document: AtlasDocument): boolean =>
  thingTypes.some((type) => indexOf(document).of(type).length > 0);

/** Everything to take hold of, the ground in the order it covers, points last: the order of the plate from below. */
export function thingsInOrder(document: AtlasDocument): readonly Thing[] {
  const rank = (thing: Thing): number =>
    thing.type === 'area' ? paintOrder.indexOf(thing.kind) : thing.type === 'line' ? 100 : 200;
  return [...document.records.values()].filter(isThing).sort((a, b) => rank(a) - rank(b));
}

/** The topmost thing at a place: a point or line within reach, else the area seen there. */
export function thingAt(document: AtlasDocument, at: PlanePoint, reachM: number): Thing | null {
  const found = indexOf(document);
  const reach = boxAbout(at, reachM);
  const near = [
    ...found
      .linesIn(reach)
      .map(({ record, points }) => ({ record, awayM: nearestOnLine(at, points).distanceM * 1.5 })),
    ...found.pointsIn(reach).map(({ record, points }) => ({ record, awayM: distanceM(at, points[0] ?? at) })),
  ].reduce<{ readonly thing: Thing | null; readonly awayM: number }>(
    (best, { record, awayM }) => (isThing(record) && awayM <= best.awayM ? { thing: record, awayM } : best),
    { thing: null, awayM: reachM },
  );
  return near.thing ?? groundAt(document, at);
}

/** The area seen at a place: of those there the one that covers the others, of two of a kind the smaller. */
export function groundAt(
  document: AtlasDocument,
  at: PlanePoint,
  counts: (area: AreaRecord) => boolean = () => true,
): AreaRecord | null {
  let top: PlaneShape<AreaRecord> | null = null;
  for (const area of indexOf(document).areasIn(boxAbout(at, 0))) {
    if (!counts(area.record) || !pointInPolygon(at, area.polygon)) continue;
    const above =
      top === null ? 1 : paintOrder.indexOf(area.record.kind) - paintOrder.indexOf(top.record.kind);
    if (
      above > 0 ||
      (above === 0 && top !== null && polygonAreaM2(area.polygon) < polygonAreaM2(top.polygon))
    )
      top = area;
  }
  return top?.record ?? null;
}
