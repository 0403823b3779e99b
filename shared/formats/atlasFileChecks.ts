import type { AtlasRecord, RecordId } from '../atlas/records.ts';
import { FRAME_REACH_M, localFrame, type LocalFrame } from '../geometry/localFrame.ts';
import { geodesic } from '../geometry/geodesic.ts';
import { lonLat, type LonLat } from '../geometry/points.ts';
import { length2 } from '../numeric/elementary.ts';
import { selfIntersection } from '../geometry/selfIntersection.ts';
import { InputProblem } from '../words/inputProblem.ts';

/** Where in a file a record stands. */
export interface Place {
  /** Such as `feature 12 (id "b3", "Front left")`. */
  readonly short: string;
  /** With the file's name, and the field if one is meant. */
  readonly at: (field: string) => string;
}

/** More positions than this in one outline, or in a whole file, were not traced by a person; they bound the work below. */
const MOST_IN_RING = 5_000;
const MOST_IN_FILE = 250_000;

/** Positions far from the anchor, and outlines that are too long or cross themselves, are refused. */
export function checkPositions(
  records: readonly AtlasRecord[],
  placeOf: ReadonlyMap<AtlasRecord, Place>,
  crossingOutlines: 'refuse' | 'keep',
): void {
  const header = records.find((record) => record.type === 'atlas');
  if (header === undefined) return;
  const frame = localFrame(header.anchor);
  let count = 0;
  for (const record of records) {
    const place = placeOf.get(record);
    if (place === undefined) continue;
    for (const { positions, field } of positionLists(record)) {
      count += positions.length;
      if (positions.length > MOST_IN_RING || count > MOST_IN_FILE)
        throw new InputProblem(
          'too-many-positions',
          positions.length > MOST_IN_RING
            ? `The line has ${String(positions.length)} positions; the most is ${String(MOST_IN_RING)}.`
            : `The file has more than ${String(MOST_IN_FILE)} positions.`,
          place.at(field),
          'Simplify the outline: a corner every foot is plenty.',
        );
      const far = positions.findIndex((position) => !near(frame, position));
      const position = positions[far];
      if (position !== undefined)
        throw farAway(frame, position, place.at(field === '' ? '' : `${field}[${String(far)}]`));
    }
    if (record.type !== 'area' || crossingOutlines === 'keep') continue;
    record.rings.forEach((ring, r) => {
      const crossing = selfIntersection(ring.map(frame.toPlane));
      if (crossing === null) return;
      const [lon, lat] = frame.toLonLat(crossing.at);
      const [first, second] = crossing.segments;
      throw new InputProblem(
        'self-crossing',
        `The outline crosses itself: the sides after corners ${String(first + 1)} and ${String(second + 1)} meet at ${lon.toFixed(7)}, ${lat.toFixed(7)}.`,
        place.at(`geometry.coordinates[${String(r)}]`),
        'Move or take out one of the corners there.',
      );
    });
  }
}

function positionLists(record: AtlasRecord): readonly { positions: readonly LonLat[]; field: string }[] {
  switch (record.type) {
    case 'area':
      return record.rings.map((positions, r) => ({ positions, field: `geometry.coordinates[${String(r)}]` }));
    case 'elevationGrid':
    case 'picture':
      return record.corners.map((positions, r) => ({
        positions,
        field: `geometry.coordinates[${String(r)}]`,
      }));
    case 'line':
      return [{ positions: record.positions, field: 'geometry.coordinates' }];
    case 'hole':
      return record.line === null ? [] : [{ positions: record.line, field: 'line' }];
    case 'spotHeight':
    case 'slopeReading':
    case 'planeByEye':
    case 'holeLocation':
    case 'ballPosition':
    case 'landmark':
      return [{ positions: [record.at], field: '' }];
    default:
      return [];
  }
}

function near(frame: LocalFrame, position: LonLat): boolean {
  // On the far side of the earth the plane folds back, so degrees are looked at first.
  if (Math.abs(position[1] - frame.anchor[1]) > 1) return false;
  const { eastM, northM } = frame.toPlane(position);
  return length2(eastM, northM) < FRAME_REACH_M && facing(frame, position);
}

function facing(frame: LocalFrame, position: LonLat): boolean {
  const apart = Math.abs(position[0] - frame.anchor[0]);
  return apart < 90 || apart > 270;
}

function farAway(frame: LocalFrame, position: LonLat, place: string): InputProblem {
  const [lon, lat] = position;
  const swapped = Math.abs(lon) <= 90 && near(frame, lonLat(lat, lon));
  return new InputProblem(
    'position-far-away',
    `The position ${String(lon)}, ${String(lat)} lies ${String(Math.round(geodesic(frame.anchor, position).distanceM / 1000))} km from the anchor of the atlas.`,
    place,
    swapped
      ? 'Longitude comes first and latitude second: they are swapped.'
      : 'Correct it, or correct the anchor in swale.atlas.',
  );
}

/** Every id that a record names must be there, and be of the right type. */
export function checkReferences(
  records: readonly AtlasRecord[],
  placeOf: ReadonlyMap<AtlasRecord, Place>,
): void {
  const byId = new Map<RecordId, AtlasRecord>(records.map((record) => [record.id, record]));
  const need = (
    record: AtlasRecord,
    field: string,
    id: RecordId,
    fits: (found: AtlasRecord) => boolean,
    what: string,
  ): void => {
    const found = byId.get(id);
    if (found !== undefined && fits(found)) return;
    throw new InputProblem(
      'unknown-reference',
      found === undefined
        ? `It names "${id}", which is not in the file.`
        : `It names "${id}", which is not ${what}.`,
      placeOf.get(record)?.at(field) ?? field,
      `Name ${what} that is in the file, or take this out.`,
    );
  };
  for (const record of records) {
    if (record.type === 'hole' && record.greenId !== null)
      need(
        record,
        'greenId',
        record.greenId,
        (found) => found.type === 'area' && found.kind === 'green',
        'a green',
      );
    if (record.type === 'holeLocation' || record.type === 'ballPosition')
      need(record, 'properties.holeId', record.holeId, (found) => found.type === 'hole', 'a hole or station');
    if (record.type === 'choice') {
      need(record, 'ballId', record.ballId, (found) => found.type === 'ballPosition', 'a ball position');
      need(record, 'flagId', record.flagId, (found) => found.type === 'holeLocation', 'a hole location');
      need(record, 'playerId', record.playerId, (found) => found.type === 'player', 'a player');
    }
  }
}
