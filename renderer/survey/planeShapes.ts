import { frameOf, headerOf, planePolygon, recordsOf } from '../../shared/atlas/document.ts';
import type {
  AreaRecord,
  AtlasDocument,
  AtlasRecord,
  LineRecord,
  SlopeReading,
  SpotHeight,
} from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint, PlanePolygon } from '../../shared/geometry/points.ts';
import {
  type Box,
  boundingBox,
  distanceM,
  nearestOnLine,
  pointInPolygon,
  polygonAreaM2,
} from '../../shared/geometry/ring.ts';
import { paintOrder } from '../../shared/plate/ground.ts';
import type { TerrainArea } from '../../shared/terrain/terrainInput.ts';

/** A record of the document laid on the plane, worked out once for as long as it stays the same. */
export interface PlaneShape<T extends AtlasRecord = AtlasRecord> {
  readonly record: T;
  readonly box: Box;
  readonly polygon: PlanePolygon;
  readonly points: readonly PlanePoint[];
}

const known = new WeakMap<LonLat, WeakMap<AtlasRecord, PlaneShape>>();
const nowhere: Box = { westM: 0, southM: 0, eastM: 0, northM: 0 };

/** The record on the document's plane. */
export function planeShape<T extends AtlasRecord>(document: AtlasDocument, record: T): PlaneShape<T> {
  const { anchor } = headerOf(document);
  const shapes = known.get(anchor) ?? new WeakMap<AtlasRecord, PlaneShape>();
  known.set(anchor, shapes);
  const before = shapes.get(record);
  // The map is keyed by the record itself, so what it holds for it is a shape of that record.
  if (before !== undefined) return before as PlaneShape<T>;
  const { toPlane } = frameOf(document);
  const polygon = record.type === 'area' ? planePolygon(frameOf(document), record.rings) : [];
  const points =
    record.type === 'line'
      ? record.positions.map(toPlane)
      : record.type === 'hole'
        ? (record.line ?? []).map(toPlane)
        : 'at' in record
          ? [toPlane(record.at)]
          : [];
  const made = { record, polygon, points, box: boundingBox([...(polygon[0] ?? []), ...points]) ?? nowhere };
  shapes.set(record, made);
  return made;
}

const areasOf = new WeakMap<AtlasDocument, readonly PlaneShape<AreaRecord>[]>();

/** Every area of a document, listed once for as long as it stays the same. */
export function areaShapes(document: AtlasDocument): readonly PlaneShape<AreaRecord>[] {
  const listed = areasOf.get(document);
  if (listed !== undefined) return listed;
  const made = recordsOf(document, 'area').map((area) => planeShape(document, area));
  areasOf.set(document, made);
  return made;
}
export const lineShapes = (document: AtlasDocument): readonly PlaneShape<LineRecord>[] =>
  recordsOf(document, 'line').map((line) => planeShape(document, line));

export const terrainArea = ({ record, polygon }: PlaneShape<AreaRecord>): TerrainArea => ({
  id: record.id,
  kind: record.kind,
  name: record.name,
  polygon,
  lipHeightM: record.lipHeightM,
  treeHeightM: record.treeHeightM,
  canopyBaseM: record.canopyBaseM,
});

export const meets = (a: Box, b: Box): boolean =>
  a.westM <= b.eastM && b.westM <= a.eastM && a.southM <= b.northM && b.southM <= a.northM;

export const widened = (box: Box, byM: number): Box => ({
  westM: box.westM - byM,
  southM: box.southM - byM,
  eastM: box.eastM + byM,
  northM: box.northM + byM,
});

/** A thing a person can take hold of on the plate. */
export type Thing = Extract<
  AtlasRecord,
  {
    readonly type:
      'area' | 'line' | 'spotHeight' | 'slopeReading' | 'holeLocation' | 'ballPosition' | 'landmark';
  }
>;

export const isThing = (record: AtlasRecord | undefined): record is Thing =>
  record !== undefined &&
  (record.type === 'area' ||
    record.type === 'line' ||
    record.type === 'spotHeight' ||
    record.type === 'slopeReading' ||
    record.type === 'holeLocation' ||
    record.type === 'ballPosition' ||
    record.type === 'landmark');

/** Everything to take hold of, the ground in the order it covers, points last: the order of the plate from below. */
export function thingsInOrder(document: AtlasDocument): readonly Thing[] {
  const rank = (thing: Thing): number =>
    thing.type === 'area' ? paintOrder.indexOf(thing.kind) : thing.type === 'line' ? 100 : 200;
  return [...document.records.values()].filter(isThing).sort((a, b) => rank(a) - rank(b));
}

/** The topmost thing at a place: a point or line within reach, else the area seen there. */
export function thingAt(document: AtlasDocument, at: PlanePoint, reachM: number): Thing | null {
  const here = { westM: at.eastM, eastM: at.eastM, southM: at.northM, northM: at.northM };
  let best: Thing | null = null;
  let nearest = reachM;
  let ground: PlaneShape<AreaRecord> | null = null;
  for (const thing of thingsInOrder(document)) {
    const shape = planeShape(document, thing);
    if (!meets(widened(shape.box, reachM), here)) continue;
    const [first] = shape.points;
    if (thing.type === 'area') {
      if (!pointInPolygon(at, shape.polygon)) continue;
      const area: PlaneShape<AreaRecord> = planeShape(document, thing);
      // Of two of one kind, the smaller lies on top of the larger for the hand: the other is reached beside it.
      if (ground?.record.kind !== thing.kind || polygonAreaM2(area.polygon) < polygonAreaM2(ground.polygon))
        ground = area;
    } else if (first !== undefined) {
      const away =
        thing.type === 'line' ? nearestOnLine(at, shape.points).distanceM * 1.5 : distanceM(at, first);
      if (away > nearest) continue;
      nearest = away;
      best = thing;
    }
  }
  return best ?? ground?.record ?? null;
}

export interface Readings {
  readonly heights: readonly PlaneShape<SpotHeight>[];
  readonly slopes: readonly PlaneShape<SlopeReading>[];
}

export const readingsOf = (document: AtlasDocument): Readings => ({
  heights: recordsOf(document, 'spotHeight').map((one) => planeShape(document, one)),
  slopes: recordsOf(document, 'slopeReading').map((one) => planeShape(document, one)),
});
