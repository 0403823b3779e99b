import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { flagGround, type FlagGround } from './flagGround.ts';
import type { Surface } from './surface.ts';
import type { SurveyedGround } from './surveyedGround.ts';

/** A place for a hole, in one third of the green seen along the line of play. */
export interface ProposedFlag {
  readonly part: 'front' | 'middle' | 'back';
  readonly at: PlanePoint;
  readonly ground: FlagGround;
}

const SPACING_M = 0.5;
/** Holes this far to either side of each other serve the green better than three in one row, metres. */
const APART_M = 4;

/**
 * Places fair ground in the front, middle and back thirds of the green as seen along the line of play; a third without any
 * is left out. Within a third the evenest ground wins, with a little for standing aside of the holes already placed.
 *
 * @param playBearingDeg true bearing in which the green is approached
 */
export function proposeFlags(
  ground: SurveyedGround<Surface>,
  playBearingDeg: number,
  stimpFt: number,
): ProposedFlag[] {
  const angle = (playBearingDeg * Math.PI) / 180;
  const playEast = sin(angle);
  const playNorth = cos(angle);
  const { westM, eastM, southM, northM } = ground.extent;
  const on: { readonly at: PlanePoint; readonly along: number; readonly across: number }[] = [];
  for (let y = southM + SPACING_M / 2; y < northM; y += SPACING_M) {
    for (let x = westM + SPACING_M / 2; x < eastM; x += SPACING_M) {
      const at = { eastM: x, northM: y };
      if (!ground.isOnGreen(at)) continue;
      on.push({ at, along: x * playEast + y * playNorth, across: x * playNorth - y * playEast });
    }
  }
  if (on.length === 0) return [];
  const near = on.reduce((least, c) => Math.min(least, c.along), Infinity);
  const far = on.reduce((most, c) => Math.max(most, c.along), -Infinity);
  const candidates = on
    .map((c) => ({ ...c, ground: flagGround(ground, c.at, stimpFt) }))
    .filter((c) => c.ground.faults.length === 0);
  const chosen: ((typeof candidates)[number] & { readonly part: ProposedFlag['part'] })[] = [];
  // The middle last: it has the widest choice of sides.
  for (const [part, third] of [
    ['front', 0],
    ['back', 2],
    ['middle', 1],
  ] as const) {
    const from = near + ((far - near) * third) / 3;
    const to = near + ((far - near) * (third + 1)) / 3;
    let best: (typeof candidates)[number] | undefined;
    let least = Infinity;
    for (const candidate of candidates) {
      if (candidate.along < from || candidate.along > to) continue;
      const { slopeSpreadPct, steepestPct, limitPct } = candidate.ground;
      const aside = chosen.reduce(
        (sum, other) => sum + Math.max(0, 1 - Math.abs(other.across - candidate.across) / APART_M),
        0,
      );
      // Depth within the third: the front hole towards the front, the back hole towards the back.
      const depth = Math.abs(candidate.along - (near + ((far - near) * (2 * third + 1)) / 6)) / (far - near);
      const cost = slopeSpreadPct + steepestPct / limitPct + 0.5 * aside + depth;
      if (cost < least) {
        least = cost;
        best = candidate;
      }
    }
    if (best !== undefined) chosen.push({ ...best, part });
  }
  const order = ['front', 'middle', 'back'];
  return chosen
    .sort((a, b) => order.indexOf(a.part) - order.indexOf(b.part))
    .map(({ part, at, ground: fair }) => ({ part, at, ground: fair }));
}
