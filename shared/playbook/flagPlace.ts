import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { pacesFromMetres } from '../units/conversions.ts';
import { whole } from '../units/numerals.ts';
import type { UnitsPreference } from '../units/preference.ts';

/** Where a flag stands on its green, seen along the line of play, metres. */
export interface FlagPlace {
  readonly onM: number;
  readonly depthM: number;
  readonly fromLeftM: number;
  readonly fromRightM: number;
}

/** Distances from a point on the green to its edge: toward the player, beyond, left and right. Null off the green. */
export function flagPlace(green: PlanePolygon, flag: PlanePoint, playBearingDeg: number): FlagPlace | null {
  const toward = edgeDistance(green, flag, playBearingDeg + 180);
  const beyond = edgeDistance(green, flag, playBearingDeg);
  const left = edgeDistance(green, flag, playBearingDeg - 90);
  const right = edgeDistance(green, flag, playBearingDeg + 90);
  if (![toward, beyond, left, right].every(Number.isFinite)) return null;
  return { onM: toward, depthM: toward + beyond, fromLeftM: left, fromRightM: right };
}

/** Distance from a point along a bearing to the first side of the polygon met, Infinity when none is. */
function edgeDistance(green: PlanePolygon, from: PlanePoint, bearingDeg: number): number {
  const a = (bearingDeg * Math.PI) / 180;
  const [dx, dy] = [Math.sin(a), Math.cos(a)];
  let least = Infinity;
  for (const ring of green) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      if (previous !== undefined) {
        const ax = previous.eastM - from.eastM;
        const ay = previous.northM - from.northM;
        const ex = point.eastM - previous.eastM;
        const ey = point.northM - previous.northM;
        const det = dx * ey - dy * ex;
        const along = (ax * ey - ay * ex) / det;
        const side = (ax * dy - ay * dx) / det;
        if (det !== 0 && along >= 0 && side >= 0 && side <= 1) least = Math.min(least, along);
      }
      previous = point;
    }
  }
  return least;
}

/** "11 on, 13 from left", whole paces from the nearer side; "11 on, at the left edge" within half a pace of it. */
export function flagPlaceText(place: FlagPlace, units: UnitsPreference): string {
  const paces = (m: number): string => whole(pacesFromMetres(m, units.paceM));
  const nearer = place.fromLeftM <= place.fromRightM ? 'left' : 'right';
  const aside = paces(Math.min(place.fromLeftM, place.fromRightM));
  const on = paces(place.onM);
  return [
    on === '0' ? 'front edge' : `${on} on`,
    aside === '0' ? `at the ${nearer} edge` : `${aside} from ${nearer}`,
  ].join(', ');
}

const eighths = ['back', 'back right', 'right', 'front right', 'front', 'front left', 'left', 'back left'];

/** Which way the ground falls seen along the line of play: "front left". */
export function fallWord(downhillBearingDeg: number, playBearingDeg: number): string {
  const turned = (((downhillBearingDeg - playBearingDeg) % 360) + 360) % 360;
  return eighths[Math.round(turned / 45) % 8] ?? 'front';
}
