import { createStore } from 'zustand/vanilla';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { MeasureHere } from '../../shared/terrain/measureNext.ts';

/** Where one more height would help a plan most, for the plates to draw and the survey to list. */
export interface MeasureSpots {
  readonly holeId: string | null;
  /** What it would help: "ball 3 to flag A". */
  readonly shot: string;
  readonly spots: readonly MeasureHere[];
  /** The one somebody wants to go to; null once there. */
  readonly wanted: PlanePoint | null;
}

const nowhere: MeasureSpots = { holeId: null, shot: '', spots: [], wanted: null };

export const measureSpots = createStore<MeasureSpots>(() => nowhere);
