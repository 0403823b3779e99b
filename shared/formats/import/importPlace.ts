import { frameOf, headerOf } from '../../atlas/document.ts';
import { canonicalPosition } from '../../atlas/canonical.ts';
import type { AtlasDocument, AtlasHeader } from '../../atlas/records.ts';
import { FRAME_REACH_M, localFrame, type LocalFrame } from '../../geometry/localFrame.ts';
import { lonLat, type LonLat } from '../../geometry/points.ts';
import { length2 } from '../../numeric/elementary.ts';
import { InputProblem } from '../../words/inputProblem.ts';

export interface ImportPlace {
  readonly frame: LocalFrame;
  /** The header to set with the import; null where the atlas keeps its own. */
  readonly header: AtlasHeader | null;
}

const onTheMap: ReadonlySet<string> = new Set([
  ...[
    'area',
    'line',
    'spotHeight',
    'slopeReading',
    'planeByEye',
    'elevationGrid',
    'holeLocation',
    'ballPosition',
    'landmark',
  ],
]);

/**
 * Where positions of a file fall in the atlas. An atlas with nothing on the map yet takes its place from the file; one that
 * is drawn on a blank canvas has to be set down on the earth first.
 *
 * @throws InputProblem for positions out of range or (all of them) far away, naming swapped coordinates where it is that
 */
export function importPlace(
  document: AtlasDocument,
  positions: readonly LonLat[],
  fileName: string,
): ImportPlace {
  const beyond = positions.find(([lon, lat]) => Math.abs(lat) > 90 || Math.abs(lon) > 180);
  if (beyond !== undefined)
    throw new InputProblem(
      'position-out-of-range',
      `The position ${beyond.join(', ')} is not on the earth.`,
      fileName,
      positions.every(([lon, lat]) => Math.abs(lon) <= 90 && Math.abs(lat) <= 180)
        ? 'Longitude comes first and latitude second: they are swapped. Export the file again.'
        : 'Positions are WGS 84 degrees: these may be of a map projection. Export the file again as WGS 84.',
    );
  const header = headerOf(document);
  const empty = [...document.records.values()].every(
    (record) => !onTheMap.has(record.type) && !(record.type === 'hole' && record.line !== null),
  );
  if (!header.placed && !empty)
    throw new InputProblem(
      'atlas-unplaced',
      'The atlas is drawn on a blank canvas, so it is not known where map data belongs in it.',
      header.name,
      'Place the atlas on the earth first, or bring the file into a new one.',
    );
  if (empty && !header.placed) {
    const anchor = canonicalPosition(middle(positions));
    return { frame: localFrame(anchor), header: { ...header, anchor, placed: true } };
  }
  const frame = frameOf(document);
  if (positions.length > 0 && !positions.some((at) => isNear(frame, at))) {
    const swapped = positions.every((at) => Math.abs(at[0]) <= 90 && isNear(frame, lonLat(at[1], at[0])));
    throw new InputProblem(
      swapped ? 'lat-lon-swapped' : 'position-far-away',
      swapped
        ? 'Latitude stands where longitude belongs.'
        : `Everything in it lies more than ${String(FRAME_REACH_M / 1000)} km from the atlas.`,
      fileName,
      swapped
        ? 'Longitude comes first and latitude second: export the file again.'
        : 'Choose the file of this course, or bring this one into a new atlas.',
    );
  }
  return { frame, header: null };
}

export function isNear(frame: LocalFrame, at: LonLat): boolean {
  if (Math.abs(at[1] - frame.anchor[1]) > 1) return false;
  const apart = Math.abs(at[0] - frame.anchor[0]);
  if (apart > 90 && apart < 270) return false;
  const { eastM, northM } = frame.toPlane(at);
  return length2(eastM, northM) < FRAME_REACH_M;
}

function middle(positions: readonly LonLat[]): LonLat {
  const sorted = (axis: 0 | 1): readonly number[] => positions.map((at) => at[axis]).sort((a, b) => a - b);
  const half = (list: readonly number[]): number => list[Math.floor(list.length / 2)] ?? 0;
  return lonLat(half(sorted(0)), half(sorted(1)));
}
