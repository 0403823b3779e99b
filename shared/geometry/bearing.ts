import { atan2, cos, sin } from '../numeric/elementary.ts';
import { radiansFromDegrees } from '../units/brands.ts';
import { planePoint, type PlanePoint } from './points.ts';

/** Bearing of one point of the plane from another, degrees clockwise from the plane's north, in [0, 360). */
export function bearingDeg(from: PlanePoint, to: PlanePoint): number {
  const degrees = (atan2(to.eastM - from.eastM, to.northM - from.northM) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** The point reached by going a distance on a bearing. */
export function pointAlong(from: PlanePoint, bearing: number, lengthM: number): PlanePoint {
  const angle = radiansFromDegrees(bearing);
  return planePoint(from.eastM + lengthM * sin(angle), from.northM + lengthM * cos(angle));
}
