import type { PlaneRing } from '../../geometry/points.ts';
import { distanceM, perimeterM, signedAreaM2 } from '../../geometry/ring.ts';
import { selfIntersection } from '../../geometry/selfIntersection.ts';
import { simplifiedRing } from '../../geometry/simplified.ts';
import { untangled } from '../../geometry/topology.ts';
import { MOST_IN_OUTLINE } from './limits.ts';

const SMALLEST_M2 = 0.5;
/** A receiver in the hand wanders by more than this between fixes; more would cut round corners noticeably. */
const WALKED_TOLERANCE_M = 0.1;
const DENSE_TOLERANCE_M = 0.1;
const SAME_PLACE_M = 0.005;
/** Longer outlines are not untangled: the search for crossings takes the square of their length. */
const MOST_UNTANGLED = 1_500;

export type CleanOutline =
  { readonly ring: PlaneRing; readonly mended: boolean } | { readonly ring: null; readonly why: string };

/** An outline fit for an atlas, or why it cannot be one. */
export function cleanOutline(given: PlaneRing, walked: boolean): CleanOutline {
  let ring = given.filter(
    (point, i) => distanceM(point, given[(i + 1) % given.length] ?? point) > SAME_PLACE_M,
  );
  if (walked) ring = [...simplifiedRing(ring, WALKED_TOLERANCE_M)];
  if (ring.length > MOST_IN_OUTLINE) ring = [...simplifiedRing(ring, DENSE_TOLERANCE_M)];
  if (ring.length > MOST_IN_OUTLINE)
    return {
      ring: null,
      why: `It has more than ${String(MOST_IN_OUTLINE)} corners, a corner every ${(perimeterM(ring) / ring.length).toFixed(2)} m: simplify it first.`,
    };
  if (ring.length < 3) return { ring: null, why: 'It has fewer than three corners.' };
  if (selfIntersection(ring) === null)
    return Math.abs(signedAreaM2(ring)) < SMALLEST_M2
      ? { ring: null, why: 'It is smaller than half a square metre.' }
      : { ring, mended: false };
  const crosses = 'It crosses itself: correct it where it was drawn.';
  if (ring.length > MOST_UNTANGLED) return { ring: null, why: crosses };
  const [largest] = untangled(ring);
  const mended = largest?.[0];
  // Loops of a careless pencil are cut off; where they are a good part of it all, somebody has to look.
  const kept = mended === undefined ? 0 : Math.abs(signedAreaM2(mended));
  const whole = untangled(ring).reduce((sum, [part]) => sum + Math.abs(signedAreaM2(part ?? [])), 0);
  return mended === undefined || kept < 0.9 * whole || kept < SMALLEST_M2 || selfIntersection(mended) !== null
    ? { ring: null, why: crosses }
    : { ring: mended, mended: true };
}

/** Whether the ends of a walked line meet well enough to be an outline. */
export function meetsItself(line: PlaneRing): boolean {
  const [first, last] = [line[0], line.at(-1)];
  if (first === undefined || last === undefined || line.length < 4) return false;
  return distanceM(first, last) <= Math.max(3, 0.1 * perimeterM(line));
}
