import { planePoint, type PlanePoint, type PlaneRing } from './points.ts';

export interface Crossing {
  /** Indices of the first points of the two segments. */
  readonly segments: readonly [number, number];
  readonly at: PlanePoint;
}

/**
 * The first place where a ring meets itself other than from one segment to the next, or null. Segments are swept from
 * west to east, so only those whose spans overlap are compared.
 */
export function selfIntersection(ring: PlaneRing): Crossing | null {
  const count = ring.length;
  const first = ring[0];
  if (first === undefined) return null;
  const segments = ring.map((a, index) => {
    const b = ring[index + 1] ?? first;
    return { index, a, b, westM: Math.min(a.eastM, b.eastM), eastM: Math.max(a.eastM, b.eastM) };
  });
  segments.sort((p, q) => p.westM - q.westM || p.index - q.index);
  let best: Crossing | null = null;
  for (let i = 0; i < count; i += 1) {
    const s = segments[i];
    if (s === undefined) continue;
    for (let j = i + 1; j < count; j += 1) {
      const t = segments[j];
      if (t === undefined || t.westM > s.eastM) break;
      const gap = Math.abs(s.index - t.index);
      const low = Math.min(s.index, t.index);
      const high = Math.max(s.index, t.index);
      const adjacent = gap === 1 || gap === count - 1;
      const at = adjacent
        ? turnsBack(low === s.index ? s : t, low === s.index ? t : s, gap === 1)
        : meeting(s, t);
      if (at === null) continue;
      if (best === null || low < best.segments[0] || (low === best.segments[0] && high < best.segments[1]))
        best = { segments: [low, high], at };
    }
  }
  return best;
}

interface Segment {
  readonly a: PlanePoint;
  readonly b: PlanePoint;
}

/** Twice the area of the triangle a, b, c; positive when c is left of a to b. */
function turn(a: PlanePoint, b: PlanePoint, c: PlanePoint): number {
  return (b.eastM - a.eastM) * (c.northM - a.northM) - (c.eastM - a.eastM) * (b.northM - a.northM);
}

function within(s: Segment, p: PlanePoint): boolean {
  return (
    p.eastM >= Math.min(s.a.eastM, s.b.eastM) &&
    p.eastM <= Math.max(s.a.eastM, s.b.eastM) &&
    p.northM >= Math.min(s.a.northM, s.b.northM) &&
    p.northM <= Math.max(s.a.northM, s.b.northM)
  );
}

function meeting(s: Segment, t: Segment): PlanePoint | null {
  const c = turn(s.a, s.b, t.a);
  const d = turn(s.a, s.b, t.b);
  const e = turn(t.a, t.b, s.a);
  const f = turn(t.a, t.b, s.b);
  if (c > 0 !== d > 0 && e > 0 !== f > 0 && c !== 0 && d !== 0 && e !== 0 && f !== 0) {
    const share = c / (c - d);
    return planePoint(
      t.a.eastM + share * (t.b.eastM - t.a.eastM),
      t.a.northM + share * (t.b.northM - t.a.northM),
    );
  }
  if (c === 0 && within(s, t.a)) return t.a;
  if (d === 0 && within(s, t.b)) return t.b;
  if (e === 0 && within(t, s.a)) return s.a;
  if (f === 0 && within(t, s.b)) return s.b;
  return null;
}

/** Neighbours share a point; they cross only where the second runs back along the first. */
function turnsBack(low: Segment, high: Segment, follows: boolean): PlanePoint | null {
  const [before, after] = follows ? [low, high] : [high, low];
  const corner = after.a;
  if (turn(before.a, corner, after.b) !== 0) return null;
  const dot =
    (corner.eastM - before.a.eastM) * (after.b.eastM - corner.eastM) +
    (corner.northM - before.a.northM) * (after.b.northM - corner.northM);
  return dot < 0 ? corner : null;
}
