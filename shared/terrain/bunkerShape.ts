import { edgeDistance, type FlatPolygon } from './rings.ts';

/** Lip of a bunker whose height nobody gave, metres. */
export const DEFAULT_LIP_M = 0.3;
/** The face is never narrower than this, metres. */
const LEAST_FACE_M = 0.3;
/** Width of the face for each metre of lip: with the profile below its steepest part lies at atan(1.5/0.75) = 63 degrees. */
const FACE_PER_LIP = 0.75;

/** How far in from the edge the face of a bunker reaches, metres: nothing farther away shapes it. */
export const faceWidthM = (lipHeightM: number): number => Math.max(LEAST_FACE_M, FACE_PER_LIP * lipHeightM);

const towardsInside = new Float64Array(2);

/**
 * How far the sand lies below the ground that goes on over the bunker: 0 at the edge, the full lip height from the foot of
 * the face inwards, and in between lip x (3 t^2 - 2 t^3), t the distance from the edge over the width of the face. The
 * floor is thus parallel to the fitted ground. Writes depth and its east and north derivatives into out[0..2].
 */
export function bunkerDepth(
  polygon: FlatPolygon,
  lipHeightM: number,
  eastM: number,
  northM: number,
  out: Float64Array,
): void {
  const inward = edgeDistance(polygon, eastM, northM, towardsInside);
  const faceM = faceWidthM(lipHeightM);
  const t = Math.min(1, Math.max(0, inward / faceM));
  out[0] = lipHeightM * t * t * (3 - 2 * t);
  const growth = ((lipHeightM * 6) / faceM) * t * (1 - t);
  out[1] = growth * (towardsInside[0] as number);
  out[2] = growth * (towardsInside[1] as number);
}
