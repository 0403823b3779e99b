import type { LonLat, PlanePoint } from './points.ts';

/** The plane of one atlas, made once from its anchor on the WGS 84 ellipsoid. */
export interface LocalFrame {
  readonly anchor: LonLat;
  toPlane(position: LonLat): PlanePoint;
  toLonLat(point: PlanePoint): LonLat;
}
