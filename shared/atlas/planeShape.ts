import type { LonLat, PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { type Box, boundingBox } from '../geometry/ring.ts';
import { frameOf, headerOf, planePolygon } from './document.ts';
import type { AtlasDocument, AtlasRecord } from './records.ts';

/** A record of the document laid on the plane, worked out once for as long as it stays the same. */
export interface PlaneShape<T extends AtlasRecord = AtlasRecord> {
  readonly record: T;
  /** Round all of it; of no size at the origin for a record without a place. */
  readonly box: Box;
  /** Areas: their rings, the outer one first. */
  readonly polygon: PlanePolygon;
  /** Lines and lines of play: all their points. Points: the only one. */
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
