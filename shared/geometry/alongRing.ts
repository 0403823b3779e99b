import type { PlanePoint, PlaneRing } from './points.ts';
import { distanceM, lineLengthM, nearestOnRing } from './ring.ts';

/** A place this near to a ring lies on it, metres. */
const ON_RING_M = 0.02;
/** Corners this near to an end of the way are that end, metres. */
const SAME_M = 0.01;

/** The corners of a ring between two places on it, the shorter way round and the longer. */
export interface WaysAlong {
  readonly shorter: readonly PlanePoint[];
  readonly longer: readonly PlanePoint[];
  /** Length of the shorter way, metres. */
  readonly shorterM: number;
}

/** Both ways along a ring from one place to another; null where one of them does not lie on it or both lie on one side. */
export function waysAlong(ring: PlaneRing, from: PlanePoint, to: PlanePoint): WaysAlong | null {
  if (ring.length < 3) return null;
  const a = nearestOnRing(from, ring);
  const b = nearestOnRing(to, ring);
  if (a.distanceM > ON_RING_M || b.distanceM > ON_RING_M || distanceM(from, to) < SAME_M) return null;
  const on = onward(ring, a.segment, b.segment, isBefore(ring, a.segment, a.at, b.segment, b.at));
  const back = onward(ring, b.segment, a.segment, isBefore(ring, b.segment, b.at, a.segment, a.at));
  const between = (corners: readonly PlanePoint[]): readonly PlanePoint[] =>
    corners.filter((at) => distanceM(at, from) > SAME_M && distanceM(at, to) > SAME_M);
  const ways = [between(on), between(back.toReversed())].map((corners) => ({
    corners,
    lengthM: lineLengthM([from, ...corners, to]),
  }));
  const [shorter, longer] = ways.sort((one, other) => one.lengthM - other.lengthM);
  if (shorter === undefined || longer === undefined || shorter.corners.length === 0) return null;
  return { shorter: shorter.corners, longer: longer.corners, shorterM: shorter.lengthM };
}

/** Corners passed going onward from a place on one side to a place on another; none on the same side further on. */
function onward(ring: PlaneRing, from: number, to: number, ahead: boolean): readonly PlanePoint[] {
  const passed: PlanePoint[] = [];
  if (from === to && ahead) return passed;
  let at = from;
  do {
    at = (at + 1) % ring.length;
    const corner = ring[at];
    if (corner !== undefined) passed.push(corner);
  } while (at !== to);
  return passed;
}

function isBefore(
  ring: PlaneRing,
  side: number,
  at: PlanePoint,
  otherSide: number,
  other: PlanePoint,
): boolean {
  const start = ring[side];
  return side === otherSide && start !== undefined && distanceM(start, at) <= distanceM(start, other);
}
