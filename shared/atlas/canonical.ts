import { lonLat, type LonLat } from '../geometry/points.ts';
import type { AtlasRecord } from './records.ts';

/** Nine decimals of a degree are at most 0.11 mm: finer than anything drawn, and short enough to read. */
const DECIMALS = 9;

/** A position that is spelled so already stays the same object, so that what is kept by it, such as a frame, is kept. */
export function canonicalPosition(position: LonLat): LonLat {
  const [lonDeg, latDeg] = position;
  const [lon, lat] = [round(lonDeg), round(latDeg)];
  return Object.is(lon, lonDeg) && Object.is(lat, latDeg) ? position : lonLat(lon, lat);
}

/**
 * The one spelling of a record: positions rounded, outer rings counter-clockwise and holes clockwise (RFC 7946), no
 * negative zero, and nothing said that goes without saying. Every edit stores records so; hence what is saved and opened
 * again is equal to what was in hand.
 */
export function canonicalRecord<T extends AtlasRecord>(record: T): T;
export function canonicalRecord(record: AtlasRecord): AtlasRecord {
  switch (record.type) {
    case 'atlas':
      return { ...record, anchor: canonicalPosition(record.anchor) };
    case 'hole':
      return { ...record, line: record.line?.map(canonicalPosition) ?? null };
    case 'area':
      return {
        ...record,
        rings: record.rings.map((ring, i) => {
          const rounded = ring.map(canonicalPosition);
          const rightWay = windsCounterClockwise(rounded) === (i === 0);
          // Turned round, it still begins at the same corner.
          return rightWay ? rounded : [...rounded.slice(0, 1), ...rounded.slice(1).reverse()];
        }),
      };
    case 'line':
      return {
        ...record,
        positions: record.positions.map(canonicalPosition),
        heightM: record.heightM === null ? null : unsignedZero(record.heightM),
      };
    case 'spotHeight':
      return { ...record, at: canonicalPosition(record.at), heightM: unsignedZero(record.heightM) };
    case 'elevationGrid':
      // The corners keep their order, which says how the rows run.
      return {
        ...record,
        corners: record.corners.map((ring) => ring.map(canonicalPosition)),
        heightsM: record.heightsM.map((height) => (height === null ? null : unsignedZero(height))),
        datumShiftM: unsignedZero(record.datumShiftM),
      };
    case 'picture':
      // The corners keep their order, which says how it is turned.
      return { ...record, corners: record.corners.map((ring) => ring.map(canonicalPosition)) };
    case 'slopeReading':
    case 'planeByEye':
    case 'holeLocation':
    case 'ballPosition':
    case 'landmark':
      return { ...record, at: canonicalPosition(record.at) };
    case 'conditions': {
      // A flagstick that is out goes without saying.
      const { flagstickIn, ...rest } = record;
      return flagstickIn === false ? rest : record;
    }
    case 'player':
    case 'choice':
    case 'source':
      return record;
  }
}

const round = (degrees: number): number => unsignedZero(Number(degrees.toFixed(DECIMALS)));
const unsignedZero = (value: number): number => (value === 0 ? 0 : value);

/** Sign of the area in degrees: the order of corners is the same as in the plane. */
function windsCounterClockwise(ring: readonly LonLat[]): boolean {
  const origin = ring[0];
  let before = ring[ring.length - 1];
  if (origin === undefined || before === undefined) return true;
  let twice = 0;
  for (const at of ring) {
    twice += (before[0] - origin[0]) * (at[1] - origin[1]) - (at[0] - origin[0]) * (before[1] - origin[1]);
    before = at;
  }
  return twice >= 0;
}
