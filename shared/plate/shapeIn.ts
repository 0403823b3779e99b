import type { PlanePolygon } from '../geometry/points.ts';
import { LastMade } from './lastMade.ts';
import { type Shape, shapeOf } from './shape.ts';
import { type PlateView, projection, projectionKey } from './view.ts';

const before = new LastMade<PlanePolygon, Shape>();

/** A polygon as a view shows it, made once while polygon and view stay as they are. */
export const shapeIn = (view: PlateView, polygon: PlanePolygon): Shape =>
  before.get(polygon, [projectionKey(view)], () => shapeOf(polygon, projection(view).toDrawing));
