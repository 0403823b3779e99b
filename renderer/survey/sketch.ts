import { bearingDeg, pointAlong } from '../../shared/geometry/bearing.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM, lineLengthM, perimeterM, polygonAreaM2 } from '../../shared/geometry/ring.ts';
import { simplifiedLine } from '../../shared/geometry/simplify.ts';

/** An outline or line being drawn: pure values, so that giving it up is forgetting it. */
export interface Sketch {
  readonly corners: readonly PlanePoint[];
  /** Where the next corner would go: under the pointer or at the keyboard's cursor. */
  readonly next: PlanePoint | null;
  /** Corners on the way from the last corner to the next, where it follows an outline there is. */
  readonly along: readonly PlanePoint[];
  /** The stroke in hand while the pen is down. */
  readonly stroke: readonly PlanePoint[] | null;
  /** How many corners each action put there, so that Backspace takes back a whole stroke. */
  readonly runs: readonly number[];
}

export const emptySketch: Sketch = { corners: [], next: null, along: [], stroke: null, runs: [] };

/** Two corners closer than this are one, metres. */
const SAME_M = 0.01;

/** A corner, and with it those of the outline that is followed on the way there. */
export function addCorner(sketch: Sketch, at: PlanePoint, along: readonly PlanePoint[] = []): Sketch {
  const last = sketch.corners.at(-1);
  if (last !== undefined && distanceM(last, at) < SAME_M) return sketch;
  return {
    ...sketch,
    corners: [...sketch.corners, ...along, at],
    next: at,
    along: [],
    runs: [...sketch.runs, along.length + 1],
  };
}

export function startStroke(sketch: Sketch, at: PlanePoint): Sketch {
  return { ...sketch, stroke: [at], along: [] };
}

export function strokeTo(sketch: Sketch, at: PlanePoint, leastM: number): Sketch {
  const last = sketch.stroke?.at(-1);
  if (sketch.stroke === null || (last !== undefined && distanceM(last, at) < leastM)) return sketch;
  return { ...sketch, stroke: [...sketch.stroke, at], next: at };
}

/** Ends the stroke: its points join the corners, thinned to a tolerance. */
export function endStroke(sketch: Sketch, toleranceM: number): Sketch {
  if (sketch.stroke === null) return sketch;
  const thinned = simplifiedLine(sketch.stroke, toleranceM);
  const last = sketch.corners.at(-1);
  const first = thinned[0];
  const joins = last !== undefined && first !== undefined && distanceM(last, first) < toleranceM;
  const added = joins ? thinned.slice(1) : thinned;
  return {
    corners: [...sketch.corners, ...added],
    next: sketch.next,
    along: [],
    stroke: null,
    runs: added.length > 0 ? [...sketch.runs, added.length] : sketch.runs,
  };
}

/** A closed stroke ends where it began: its last corner, a second first one, is left out. */
export function withoutLastIfNear(sketch: Sketch, reachM: number): Sketch {
  const first = sketch.corners[0];
  const last = sketch.corners.at(-1);
  if (first === undefined || last === undefined || sketch.corners.length < 4) return sketch;
  return distanceM(first, last) <= reachM ? { ...sketch, corners: sketch.corners.slice(0, -1) } : sketch;
}

export function takeBack(sketch: Sketch): Sketch | null {
  const run = sketch.runs.at(-1) ?? 1;
  const corners = sketch.corners.slice(0, -run);
  return corners.length === 0
    ? null
    : { ...sketch, corners, along: [], stroke: null, runs: sketch.runs.slice(0, -1) };
}

/** A corner at a stated distance from the last, on a stated bearing or else towards `next`. */
export function addSide(sketch: Sketch, lengthM: number, onBearingDeg: number | null): Sketch {
  const last = sketch.corners.at(-1);
  if (last === undefined) return sketch;
  const towards =
    sketch.next !== null && distanceM(last, sketch.next) > SAME_M ? bearingDeg(last, sketch.next) : 0;
  return addCorner(sketch, pointAlong(last, onBearingDeg ?? towards, lengthM));
}

export interface SketchFacts {
  readonly sideM: number;
  readonly sideBearingDeg: number;
  /** Round a closed outline, or along a line. */
  readonly aroundM: number;
  readonly areaM2: number;
}

/** What the ink label tells of a sketch with its next corner; null before there is a side. */
export function sketchFacts({ corners, next, along, stroke }: Sketch, closed: boolean): SketchFacts | null {
  const drawn = stroke === null ? corners : [...corners, ...stroke];
  const last = drawn.at(-1);
  if (last === undefined) return null;
  const end = next ?? last;
  const lengthM = distanceM(last, end);
  const all = lengthM > SAME_M ? [...drawn, ...along, end] : drawn;
  const before = all.at(-2);
  if (before === undefined) return null;
  const from = lengthM > SAME_M ? last : before;
  return {
    sideM: along.length > 0 ? lineLengthM([from, ...along, end]) : distanceM(from, end),
    sideBearingDeg: bearingDeg(from, end),
    aroundM: closed ? perimeterM(all) : lineLengthM(all),
    areaM2: closed ? polygonAreaM2([all]) : 0,
  };
}
