import { planePoint } from '../geometry/points.ts';
import type { PlanePoint } from '../geometry/points.ts';

/** A point of the drawing: units right and down from its top left. */
export type XY = readonly [x: number, y: number];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How the plane lies on the drawing. One drawing unit is a CSS pixel on screen and 1/96 in on paper. */
export interface PlateView {
  /** The point of the plane at the middle of `box`. */
  readonly centre: PlanePoint;
  readonly unitsPerM: number;
  /** True bearing that points up the sheet, degrees. */
  readonly upBearingDeg: number;
  /** The part of the drawing the map fills. */
  readonly box: Box;
}

/** Drawing units to a metre at a map scale of 1 to `denominator`, for paper (96 units to the inch). */
export const paperUnitsPerM = (denominator: number): number => 96 / 0.0254 / denominator;

/** Equal where the plane lies the same on two drawings, whatever part of it their boxes show. */
export const projectionKey = ({ centre, unitsPerM, upBearingDeg, box }: PlateView): string =>
  [centre.eastM, centre.northM, unitsPerM, upBearingDeg, box.x + box.width / 2, box.y + box.height / 2].join(
    ' ',
  );

export interface Projection {
  readonly toDrawing: (point: PlanePoint) => XY;
  readonly toPlane: (at: XY) => PlanePoint;
  /** Direction of a true bearing on the drawing, degrees clockwise from up. */
  readonly turned: (bearingDeg: number) => number;
}

export function projection(view: PlateView): Projection {
  const angle = (view.upBearingDeg * Math.PI) / 180;
  const sin = Math.sin(angle);
  const cos = Math.cos(angle);
  const midX = view.box.x + view.box.width / 2;
  const midY = view.box.y + view.box.height / 2;
  const { unitsPerM, centre } = view;
  return {
    toDrawing: (point) => {
      const east = point.eastM - centre.eastM;
      const north = point.northM - centre.northM;
      return [midX + unitsPerM * (east * cos - north * sin), midY - unitsPerM * (east * sin + north * cos)];
    },
    toPlane: ([x, y]) => {
      const right = (x - midX) / unitsPerM;
      const up = (midY - y) / unitsPerM;
      return planePoint(centre.eastM + right * cos + up * sin, centre.northM - right * sin + up * cos);
    },
    turned: (bearingDeg) => bearingDeg - view.upBearingDeg,
  };
}

/** The view that shows all the points inside the box with a margin, no closer than `maxUnitsPerM`. */
export function fitView(
  points: readonly PlanePoint[],
  box: Box,
  options: {
    readonly upBearingDeg?: number;
    readonly marginUnits?: number;
    readonly maxUnitsPerM?: number;
  } = {},
): PlateView {
  const upBearingDeg = options.upBearingDeg ?? 0;
  const margin = options.marginUnits ?? 30;
  const level: PlateView = { centre: planePoint(0, 0), unitsPerM: 1, upBearingDeg, box };
  const { toDrawing, toPlane } = projection(level);
  const drawn = points.map(toDrawing);
  const xs = drawn.map(([x]) => x);
  const ys = drawn.map(([, y]) => y);
  if (drawn.length === 0) return { ...level, unitsPerM: 10 };
  const left = Math.min(...xs);
  const right = Math.max(...xs);
  const top = Math.min(...ys);
  const bottom = Math.max(...ys);
  const unitsPerM = Math.min(
    (box.width - 2 * margin) / Math.max(right - left, 0.5),
    (box.height - 2 * margin) / Math.max(bottom - top, 0.5),
    options.maxUnitsPerM ?? 60,
  );
  return { ...level, centre: toPlane([(left + right) / 2, (top + bottom) / 2]), unitsPerM };
}

export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const boxContains = (box: Box, [x, y]: XY): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

export const grown = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});
