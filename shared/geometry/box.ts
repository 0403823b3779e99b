import type { PlanePoint } from './points.ts';
import type { Box } from './ring.ts';

/** Whether two boxes touch or overlap. */
export const meets = (a: Box, b: Box): boolean =>
  a.westM <= b.eastM && b.westM <= a.eastM && a.southM <= b.northM && b.southM <= a.northM;

export const inBox = ({ eastM, northM }: PlanePoint, box: Box): boolean =>
  eastM >= box.westM && eastM <= box.eastM && northM >= box.southM && northM <= box.northM;

/** The box grown by so much on every side. */
export const widened = (box: Box, byM: number): Box => ({
  westM: box.westM - byM,
  southM: box.southM - byM,
  eastM: box.eastM + byM,
  northM: box.northM + byM,
});

/** The box of all places within a distance, to the corners of its square. */
export const boxAbout = ({ eastM, northM }: PlanePoint, reachM: number): Box => ({
  westM: eastM - reachM,
  southM: northM - reachM,
  eastM: eastM + reachM,
  northM: northM + reachM,
});
