import { atan, tan } from '../numeric/elementary.ts';

/** Slope as rise over run in percent, from an angle in degrees, and back. */
export const percentFromDegrees = (degrees: number): number => 100 * tan((degrees * Math.PI) / 180);
export const degreesFromPercent = (percent: number): number => (atan(percent / 100) * 180) / Math.PI;
