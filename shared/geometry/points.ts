declare const space: unique symbol;

/** WGS 84 longitude and latitude in degrees, in RFC 7946 order. */
export type LonLat = readonly [lonDeg: number, latDeg: number] & { readonly [space]: 'wgs84' };

/** A point of an atlas's local plane: metres east and north of the anchor. */
export interface PlanePoint {
  readonly eastM: number;
  readonly northM: number;
}

/** A closed ring in the plane; the first point is not repeated at the end. */
export type PlaneRing = readonly PlanePoint[];

/** An area in the plane: the outer ring first (counter-clockwise), then its holes (clockwise). */
export type PlanePolygon = readonly PlaneRing[];

export const lonLat = (lonDeg: number, latDeg: number): LonLat => [lonDeg, latDeg] as unknown as LonLat;
export const planePoint = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
