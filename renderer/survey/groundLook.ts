import { createStore } from 'zustand/vanilla';
import { USUAL_CONTOUR_STEP } from '../../shared/plate/contourSteps.ts';
import type { GroundLook } from '../workers/readGround.ts';

/** What the survey shows of the ground, while the window is open; the green speed comes from the day. */
export interface LookChoice extends Omit<GroundLook, 'stimpFt' | 'contourM'> {
  /** Place of the height between contours in the steps of the unit. */
  readonly contourStep: number;
}

export const groundLook = createStore<LookChoice>(() => ({
  slopes: false,
  arrows: false,
  water: false,
  fair: false,
  contourStep: USUAL_CONTOUR_STEP,
}));
