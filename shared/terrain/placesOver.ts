import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { boundingBox, insideDistanceM } from '../geometry/ring.ts';

/** Places on a lattice over an area and what lies within `beyondM` of it, row by row from the south-west. */
export function placesOver(area: PlanePolygon, spacingM: number, beyondM = 0): PlanePoint[] {
  const box = boundingBox(area[0] ?? []);
  if (box === null) return [];
  const places: PlanePoint[] = [];
  const [south, west] = [box.southM - beyondM + spacingM / 2, box.westM - beyondM + spacingM / 2];
  for (let northM = south; northM < box.northM + beyondM; northM += spacingM)
    for (let eastM = west; eastM < box.eastM + beyondM; eastM += spacingM)
      if (insideDistanceM({ eastM, northM }, area) > -beyondM) places.push({ eastM, northM });
  return places;
}
