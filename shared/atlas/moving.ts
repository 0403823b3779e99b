import { cos, sin } from '../numeric/elementary.ts';
import type { LonLat, PlanePoint } from '../geometry/points.ts';
import { planePoint } from '../geometry/points.ts';
import { radiansFromDegrees } from '../units/brands.ts';
import { localFrame } from '../geometry/localFrame.ts';
import { canonicalPosition, canonicalRecord } from './canonical.ts';
import { frameOf } from './document.ts';
import type { Edit } from './edits.ts';
import { changed } from './recordMap.ts';
import type { AtlasRecord, RecordId } from './records.ts';

/** Moves records over the ground by so many metres; shapes keep their size. */
export function moveRecords(
  annotation: string,
  ids: Iterable<RecordId>,
  eastM: number,
  northM: number,
): Edit {
  const wanted = [...ids];
  return {
    annotation,
    apply: (document) => {
      const frame = frameOf(document);
      return changed(
        document,
        wanted.flatMap((id) => {
          const record = document.records.get(id);
          if (record === undefined || record.type === 'atlas') return [];
          const moved = mapPositions(record, (at) => {
            const point = frame.toPlane(at);
            return frame.toLonLat(planePoint(point.eastM + eastM, point.northM + northM));
          });
          return [{ id, record: canonicalRecord(moved) }];
        }),
      );
    },
  };
}

/**
 * Sets the whole atlas down on the earth: its anchor goes to `anchor`, the sheet is turned clockwise by `turnDeg`, and every
 * shape keeps its measure. Bearings turn with it.
 */
export function placeAtlas(annotation: string, anchor: LonLat, turnDeg: number): Edit {
  return {
    annotation,
    apply: (document) => {
      const from = frameOf(document);
      const to = localFrame(canonicalPosition(anchor));
      const c = cos(radiansFromDegrees(turnDeg));
      const s = sin(radiansFromDegrees(turnDeg));
      const turned = ({ eastM, northM }: PlanePoint): PlanePoint =>
        planePoint(eastM * c + northM * s, northM * c - eastM * s);
      const turnedBearing = (deg: number): number => (((deg + turnDeg) % 360) + 360) % 360;
      const all = Array.from(document.records.values(), (record) => {
        if (record.type === 'atlas') return { ...record, anchor: to.anchor, placed: true };
        const moved = mapPositions(record, (at) => to.toLonLat(turned(from.toPlane(at))));
        return canonicalRecord(withBearings(moved, turnedBearing));
      });
      return changed(
        document,
        all.map((record) => ({ id: record.id, record })),
      );
    },
  };
}

/** The record with the bearings it holds changed: where a reading falls, and the grain of a green. */
export function withBearings(record: AtlasRecord, change: (bearingDeg: number) => number): AtlasRecord {
  if (record.type === 'slopeReading' || record.type === 'planeByEye')
    return { ...record, downhillBearingDeg: change(record.downhillBearingDeg) };
  if (record.type !== 'area' || record.grain === undefined) return record;
  return { ...record, grain: { ...record.grain, towardsDeg: change(record.grain.towardsDeg) } };
}

/** The record with every position replaced; records without a place come back as they are. */
export function mapPositions(record: AtlasRecord, move: (at: LonLat) => LonLat): AtlasRecord {
  switch (record.type) {
    case 'area':
      return { ...record, rings: record.rings.map((ring) => ring.map(move)) };
    case 'elevationGrid':
    case 'picture':
      return { ...record, corners: record.corners.map((ring) => ring.map(move)) };
    case 'line':
      return { ...record, positions: record.positions.map(move) };
    case 'hole':
      return { ...record, line: record.line?.map(move) ?? null };
    case 'spotHeight':
    case 'slopeReading':
    case 'planeByEye':
    case 'holeLocation':
    case 'ballPosition':
    case 'landmark':
      return { ...record, at: move(record.at) };
    default:
      return record;
  }
}
