import { cos, sin } from '../numeric/elementary.ts';
import { RADIANS_PER_DEGREE, RADPS_PER_RPM } from './constants.ts';
import type { Launch } from './shot.ts';

/** A launch as the simulator takes it: velocity east, north, up (m/s), then the spin vector (rad/s), into out[0..5]. */
export function launchVectors(launch: Launch, out: Float64Array): void {
  const elevation = launch.elevationDeg * RADIANS_PER_DEGREE;
  const bearing = launch.bearingDeg * RADIANS_PER_DEGREE;
  const axis = launch.spinAxisDeg * RADIANS_PER_DEGREE;
  const spin = launch.backspinRpm * RADPS_PER_RPM;
  const e = sin(bearing);
  const n = cos(bearing);
  const across = launch.speedMps * cos(elevation);
  out[0] = across * e;
  out[1] = across * n;
  out[2] = launch.speedMps * sin(elevation);
  // Backspin turns about the horizontal axis to the right of the line; tilting it right drops its right end.
  const level = spin * cos(axis);
  out[3] = level * n;
  out[4] = -level * e;
  out[5] = -spin * sin(axis);
}
