import type { PlanePoint } from '../../shared/geometry/points.ts';

/** A point of a list whose place is wanted. */
export interface PointAsked {
  /** A number or letter that stands beside it on the plate. */
  readonly label: string;
  readonly name: string;
  readonly at: PlanePoint | null;
}
