import geodesicLibrary from 'geographiclib-geodesic';
import type { LonLat } from './points.ts';

/**
 * The shortest way over the WGS 84 ellipsoid between any two positions (Karney 2013, by GeographicLib): its length, and the
 * true bearing at the start in [0, 360). For far points; near ones are measured in the local frame.
 */
export function geodesic(from: LonLat, to: LonLat): { distanceM: number; bearingDeg: number } {
  const { s12 = NaN, azi1 = NaN } = geodesicLibrary.Geodesic.WGS84.Inverse(from[1], from[0], to[1], to[0]);
  return { distanceM: s12, bearingDeg: azi1 < 0 ? azi1 + 360 : azi1 };
}
