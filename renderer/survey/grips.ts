import { frameOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Cornered } from '../../shared/atlas/shaping.ts';
import { waysAlong } from '../../shared/geometry/alongRing.ts';
import { bearingDeg } from '../../shared/geometry/bearing.ts';
import { boxAbout } from '../../shared/geometry/box.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { centroid, distanceM } from '../../shared/geometry/ring.ts';
import { type SnapLine, snapped } from '../../shared/geometry/snap.ts';
import { TURNER_PX } from '../map/groupMark.ts';
import { groupBox, groupCentre } from './group.ts';
import type { Drag, HandState, Spot } from './handState.ts';
import { indexOf, planeShape, type Thing, thingAt } from './planeShapes.ts';

/** How near a pointer has to come, pixels. */
export const REACH_PX = { close: 11, corner: 9, thing: 10, snap: 8, drag: 5, stroke: 3 } as const;
/** Sides shorter than this on the screen have no handle in their middle, pixels. */
const SIDE_PX = 30;

export const isNear = (at: PlanePoint | undefined, spot: Spot, px: number): boolean =>
  at !== undefined && distanceM(at, spot.at) <= px * spot.metresPerPx;

export const isCornered = (thing: Thing | null): thing is Thing & Cornered =>
  thing?.type === 'area' || thing?.type === 'line';

/** The corners of a ring of an area, or of a line. */
export function cornersOf(document: AtlasDocument, record: Cornered, ring: number): readonly PlanePoint[] {
  const shape = planeShape(document, record);
  return record.type === 'area' ? (shape.polygon[ring] ?? []) : shape.points;
}

/** The point a thing is turned about and moved by. */
export function middleOf(document: AtlasDocument, thing: Thing): PlanePoint {
  const { polygon, points } = planeShape(document, thing);
  const corners = polygon[0] ?? points;
  return corners.length === 0 ? frameOf(document).toPlane(frameOf(document).anchor) : centroid(corners);
}

/** The corner of a thing under the pointer. */
export function cornerAt(
  document: AtlasDocument,
  thing: Thing,
  spot: Spot,
): { readonly ring: number; readonly index: number } | null {
  if (!isCornered(thing)) return null;
  const shape = planeShape(document, thing);
  let best: { readonly ring: number; readonly index: number } | null = null;
  let least = REACH_PX.corner * spot.metresPerPx;
  for (const [ring, corners] of (thing.type === 'area' ? shape.polygon : [shape.points]).entries()) {
    for (const [index, corner] of corners.entries()) {
      const away = distanceM(corner, spot.at);
      if (away > least) continue;
      least = away;
      best = { ring, index };
    }
  }
  return best;
}

/** The handle of a held thing under the pointer: a corner, the middle of a side, the turning handle, or its body. */
export function gripAt(document: AtlasDocument, held: Thing, spot: Spot): Drag | null {
  const { id } = held;
  if (isCornered(held)) {
    const corner = cornerAt(document, held, spot);
    if (corner !== null) return { kind: 'corner', id, ...corner, isNew: false, to: spot.at };
    const shape = planeShape(document, held);
    const closed = held.type === 'area';
    for (const [ring, corners] of (closed ? shape.polygon : [shape.points]).entries()) {
      for (const [i, a] of corners.entries()) {
        const b = corners[i + 1] ?? (closed ? corners[0] : undefined);
        if (b === undefined || distanceM(a, b) < SIDE_PX * spot.metresPerPx) continue;
        const middle = planePoint((a.eastM + b.eastM) / 2, (a.northM + b.northM) / 2);
        if (isNear(middle, spot, REACH_PX.corner - 1))
          return { kind: 'corner', id, ring, index: i + 1, isNew: true, to: middle };
      }
    }
    const turner = planePoint(
      (shape.box.westM + shape.box.eastM) / 2,
      shape.box.northM + TURNER_PX * spot.metresPerPx,
    );
    if (isNear(turner, spot, REACH_PX.close)) {
      const centre = middleOf(document, held);
      return { kind: 'turn', ids: [id], centre, fromDeg: bearingDeg(centre, turner), turnDeg: 0 };
    }
  }
  return thingAt(document, spot.at, REACH_PX.thing * spot.metresPerPx)?.id === id
    ? { kind: 'move', ids: [id], from: spot.at, to: spot.at }
    : null;
}

/** The handle of several held things under the pointer: the turning one over them all, or the body of any. */
export function groupGripAt(document: AtlasDocument, things: readonly Thing[], spot: Spot): Drag | null {
  const ids = things.map(({ id }) => id);
  const box = groupBox(document, things);
  if (box === null) return null;
  const turner = planePoint((box.westM + box.eastM) / 2, box.northM + TURNER_PX * spot.metresPerPx);
  if (isNear(turner, spot, REACH_PX.close)) {
    const centre = groupCentre(document, things);
    return { kind: 'turn', ids, centre, fromDeg: bearingDeg(centre, turner), turnDeg: 0 };
  }
  const thing = thingAt(document, spot.at, REACH_PX.thing * spot.metresPerPx);
  return thing !== null && ids.includes(thing.id) ? { kind: 'move', ids, from: spot.at, to: spot.at } : null;
}

/** The place under the pointer, drawn to a corner or edge near it unless Alt is held down. */
export function snappedPlace(document: AtlasDocument, spot: Spot, without: string | null): PlanePoint {
  if (spot.alt) return spot.at;
  const reachM = REACH_PX.snap * spot.metresPerPx;
  const here = boxAbout(spot.at, reachM);
  const index = indexOf(document);
  const lines: SnapLine[] = [];
  for (const { record, polygon } of index.areasIn(here))
    if (record.id !== without) for (const ring of polygon) lines.push({ points: ring, closed: true });
  for (const { record, points } of index.linesIn(here))
    if (record.id !== without) lines.push({ points, closed: false });
  return snapped(spot.at, lines, reachM)?.at ?? spot.at;
}

/** Corners of the outline that two places lie on, the way asked for; none where no outline joins them. */
export function followed(
  document: AtlasDocument,
  from: PlanePoint,
  to: PlanePoint,
  way: HandState['way'],
): readonly PlanePoint[] {
  if (way === 'straight') return [];
  const [best] = indexOf(document)
    .areasIn(boxAbout(to, 0.05))
    .flatMap(({ polygon }) => polygon.map((ring) => waysAlong(ring, from, to)))
    .filter((ways) => ways !== null)
    .sort((a, b) => a.shorterM - b.shorterM);
  return best?.[way] ?? [];
}

/** A handle pulled to where the pointer is now. */
export function pulled(document: AtlasDocument, grip: Drag, spot: Spot): Drag {
  switch (grip.kind) {
    case 'move':
    case 'frame':
      return { ...grip, to: spot.at };
    case 'corner':
      return { ...grip, to: snappedPlace(document, spot, grip.id) };
    case 'turn': {
      const turned = bearingDeg(grip.centre, spot.at) - grip.fromDeg;
      const whole = spot.alt ? turned : Math.round(turned);
      return { ...grip, turnDeg: whole > 180 ? whole - 360 : whole < -180 ? whole + 360 : whole };
    }
    case 'crown':
      return grip;
  }
}
