import * as L from 'leaflet';
import 'leaflet/dist/leaflet.css';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';

export const MOST_ZOOM = 25;

/** A Leaflet map about the anchor of a plane, still and without controls of its own: the plate draws everything on it. */
export function plainMap(element: HTMLElement, frame: LocalFrame, minZoom: number): L.Map {
  const [lon, lat] = frame.anchor;
  return L.map(element, {
    center: [lat, lon],
    zoom: 20,
    zoomSnap: 0,
    zoomDelta: 0.5,
    maxZoom: MOST_ZOOM,
    minZoom,
    wheelPxPerZoomLevel: 160,
    zoomAnimation: false,
    fadeAnimation: false,
    inertia: false,
    keyboard: false,
    zoomControl: false,
    attributionControl: false,
    doubleClickZoom: false,
    boxZoom: false,
  });
}

export function latLngOf(frame: LocalFrame, point: PlanePoint): L.LatLng {
  const [lon, lat] = frame.toLonLat(point);
  return L.latLng(lat, lon);
}

/** Room over the highest place for the tag of a flag that stands in it, px. */
export const TAG_PX = 42;

/** Shows all the points with a little room around them; a map too small to show anything stays as it is. */
export function fitPoints(
  map: L.Map,
  frame: LocalFrame,
  points: readonly PlanePoint[],
  maxZoom: number,
): void {
  const size = map.getSize();
  if (size.x < 40 || size.y < 40 || points.length === 0) return;
  const pad = Math.round(Math.min(size.x, size.y) * 0.045) + 14;
  map.fitBounds(L.latLngBounds(points.map((point) => latLngOf(frame, point))), {
    paddingTopLeft: [pad, Math.max(pad, TAG_PX)],
    paddingBottomRight: [pad, pad],
    animate: false,
    maxZoom,
  });
}
