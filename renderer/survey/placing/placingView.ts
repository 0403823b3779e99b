import { type Affine, onPlane, type SheetPoint } from '../../../shared/geometry/affine.ts';
import { bearingDeg } from '../../../shared/geometry/bearing.ts';
import { planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { boundingBox, centroid, distanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';
import type { UnitsPreference } from '../../../shared/units/preference.ts';
import { emptyHand, type HandDrawing } from '../../map/handDrawing.ts';
import { isNear, REACH_PX } from '../grips.ts';
import type { Spot } from '../handState.ts';
import { sideWords } from '../words.ts';
import type { PlacingState } from './placingState.ts';

/** Where the turning handle stands over what is held, pixels above its top: as it is drawn. */
const TURN_HANDLE_PX = 26;

export const outlineOf = (outline: readonly SheetPoint[], affine: Affine): readonly PlanePoint[] =>
  outline.map((corner) => onPlane(affine, corner));

/** The point the subject is turned about. */
export const middleOf = (outline: readonly SheetPoint[], affine: Affine): PlanePoint =>
  outline.length === 0 ? onPlane(affine, { x: 0, y: 0 }) : centroid(outlineOf(outline, affine));

/** How far its upper edge is turned clockwise from north, degrees in (-180, 180]. */
export function turnedDeg(affine: Affine): number {
  const up = bearingDeg(planePoint(0, 0), planePoint(affine.b, affine.e));
  return up > 180 ? up - 360 : up;
}

/** The points with half as much room again about them, so that what is being placed has somewhere to go. */
export function withRoom(points: readonly PlanePoint[]): readonly PlanePoint[] {
  const box = boundingBox(points);
  if (box === null) return points;
  const east = (box.eastM - box.westM) / 4;
  const north = (box.northM - box.southM) / 4;
  return [planePoint(box.westM - east, box.southM - north), planePoint(box.eastM + east, box.northM + north)];
}

/** What a press takes hold of: the turning handle or the subject itself; what has no edge is held anywhere. */
export function grip({ subject, outline, affine }: PlacingState, spot: Spot): 'move' | 'turn' | null {
  if (subject === null) return null;
  if (subject.kind === 'source') return 'move';
  const corners = outlineOf(outline, affine);
  const box = boundingBox(corners);
  if (box === null) return null;
  const handle = planePoint((box.westM + box.eastM) / 2, box.northM + TURN_HANDLE_PX * spot.metresPerPx);
  if (isNear(handle, spot, REACH_PX.close)) return 'turn';
  return pointInPolygon(spot.at, [corners]) ? 'move' : null;
}

/** What placing shows over the plate just now. */
export function placingDrawing(state: PlacingState, units: UnitsPreference): HandDrawing {
  const { subject, way, outline, affine, pairs, span, cursor, pointer, drag } = state;
  if (subject === null) return emptyHand;
  const corners = outlineOf(outline, affine);
  const ends = span.map((on) => onPlane(affine, on));
  const [from, to = way === 'distance' ? (cursor ?? pointer) : null] = ends;
  return {
    ...emptyHand,
    cursor,
    held:
      corners.length === 0
        ? null
        : {
            polygon: [corners],
            closed: true,
            handles: false,
            corner: null,
            turner: way === 'move' && drag === null,
            bare: true,
          },
    sketch:
      from === undefined
        ? null
        : { corners: ends, next: ends.length === 1 ? to : null, stroke: [], closed: false },
    pairs: (way === 'points' ? pairs : []).map(({ on, at }, i) => ({
      label: String(i + 1),
      from: onPlane(affine, on),
      to: at,
    })),
    label:
      drag?.kind === 'turn'
        ? {
            at: middleOf(outline, affine),
            lines: [`turned ${Math.abs(drag.turnDeg).toFixed(1)}° ${drag.turnDeg < 0 ? 'left' : 'right'}`],
          }
        : from !== undefined && to !== null && ends.length === 2
          ? { at: to, lines: [`${sideWords(distanceM(from, to), units)} as it lies now`] }
          : null,
  };
}
