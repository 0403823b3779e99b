import { atan2, cos, sin } from '../numeric/elementary.ts';
import { radiansFromDegrees } from '../units/brands.ts';
import { lonLat, type LonLat, planePoint, type PlanePoint } from './points.ts';

/** WGS 84 ellipsoid: semi-major axis in metres and flattening (NGA.STND.0036, defining values). */
const A = 6378137;
const F = 1 / 298.257223563;
const E2 = F * (2 - F);
const DEG = 180 / Math.PI;

/** Positions further from the anchor than this are no part of one atlas: the plane is a tangent plane. */
export const FRAME_REACH_M = 50_000;

/** The plane of one atlas, made once from its anchor on the WGS 84 ellipsoid. */
export interface LocalFrame {
  readonly anchor: LonLat;
  readonly toPlane: (position: LonLat) => PlanePoint;
  readonly toLonLat: (point: PlanePoint) => LonLat;
}

/**
 * East and north of the tangent plane at the anchor (geodetic -> earth-centred -> east, north, up; height 0 throughout),
 * with every difference against the anchor taken before it can cancel, so that a nanometre survives: the textbook
 * subtraction of two earth-centred vectors loses one. Lengths in the plane are short of the geodesic by about
 * d^3/(6 R^2): 4e-9 m in 100 m, 4 mm in 10 km.
 */
export function localFrame(anchor: LonLat): LocalFrame {
  const [lon0Deg, lat0Deg] = anchor;
  const lat0 = radiansFromDegrees(lat0Deg);
  const s0 = sin(lat0);
  const c0 = cos(lat0);
  const w0 = Math.sqrt(1 - E2 * s0 * s0);

  const project = (dLon: number, dLat: number): PlanePoint => {
    const lat = lat0 + dLat;
    const s = sin(lat);
    const c = cos(lat);
    const w = Math.sqrt(1 - E2 * s * s);
    const half = 2 * sin(dLat / 2);
    const ds = cos(lat0 + dLat / 2) * half;
    const dc = -sin(lat0 + dLat / 2) * half;
    // 1/w - 1/w0, the change of the prime-vertical radius over A
    const dn = (E2 * ds * (s + s0)) / ((w + w0) * w * w0);
    const dAxis = dc / w + c0 * dn; // change of distance from the axis over A
    const dZ = (1 - E2) * (ds / w + s0 * dn);
    const sinHalfLon = sin(dLon / 2);
    const dOutward = dAxis - (2 * c * sinHalfLon * sinHalfLon) / w;
    return planePoint(A * (c / w) * sin(dLon), A * (c0 * dZ - s0 * dOutward));
  };

  return {
    anchor,
    toPlane: ([lonDeg, latDeg]) => {
      let dLonDeg = lonDeg - lon0Deg;
      if (dLonDeg > 180) dLonDeg -= 360;
      if (dLonDeg < -180) dLonDeg += 360;
      return project(radiansFromDegrees(dLonDeg), radiansFromDegrees(latDeg - lat0Deg));
    },
    toLonLat: ({ eastM, northM }) => {
      // Radii of curvature at the anchor start it; each round gains about as many digits as the plane is flat.
      const meridian = (A * (1 - E2)) / (w0 * w0 * w0);
      let dLat = northM / meridian;
      let dLon = atan2(eastM, (A / w0) * c0 - northM * s0);
      for (let round = 0; round < 12; round += 1) {
        const here = project(dLon, dLat);
        const missEast = eastM - here.eastM;
        const missNorth = northM - here.northM;
        if (Math.abs(missEast) + Math.abs(missNorth) < 1e-10) break;
        const lat = lat0 + dLat;
        const sinLat = sin(lat);
        const w = Math.sqrt(1 - E2 * sinLat * sinLat);
        const radius = (A * (1 - E2)) / (w * w * w);
        const parallel = (A / w) * cos(lat);
        // Jacobian of `project`, solved for the step.
        const eastByLon = parallel * cos(dLon);
        const eastByLat = -radius * sinLat * sin(dLon);
        const northByLon = s0 * parallel * sin(dLon);
        const northByLat = radius * (c0 * cos(lat) + s0 * sinLat * cos(dLon));
        const determinant = eastByLon * northByLat - eastByLat * northByLon;
        dLon += (missEast * northByLat - missNorth * eastByLat) / determinant;
        dLat += (eastByLon * missNorth - northByLon * missEast) / determinant;
      }
      let lonDeg = lon0Deg + dLon * DEG;
      if (lonDeg > 180) lonDeg -= 360;
      if (lonDeg < -180) lonDeg += 360;
      return lonLat(lonDeg, lat0Deg + dLat * DEG);
    },
  };
}
