import { cos, sin } from '../numeric/elementary.ts';
import { radiansFromDegrees } from '../units/brands.ts';
import { planePoint, type PlanePoint } from './points.ts';
import { pointAlong } from './bearing.ts';

/** A point turned clockwise about another. */
export function turnedAbout(at: PlanePoint, centre: PlanePoint, turnDeg: number): PlanePoint {
  const c = cos(radiansFromDegrees(turnDeg));
  const s = sin(radiansFromDegrees(turnDeg));
  const east = at.eastM - centre.eastM;
  const north = at.northM - centre.northM;
  return planePoint(centre.eastM + east * c + north * s, centre.northM + north * c - east * s);
}

/** Corners of a round shape, such as a tree's crown. */
export function circle(centre: PlanePoint, radiusM: number, corners = 16): readonly PlanePoint[] {
  // Counter-clockwise, as outer rings are kept.
  return Array.from({ length: corners }, (_, i) => pointAlong(centre, (-360 * i) / corners, radiusM));
}
