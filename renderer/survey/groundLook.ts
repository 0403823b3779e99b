import { createStore } from 'zustand/vanilla';
import type { GroundLook } from '../workers/readGround.ts';

/** What the survey shows of the ground, while the window is open; the green speed comes from the day. */
export type LookChoice = Omit<GroundLook, 'stimpFt'>;

export const contourStepsM = [0.02, 0.05, 0.1, 0.2] as const;

export const groundLook = createStore<LookChoice>(() => ({
  slopes: false,
  arrows: false,
  water: false,
  fair: false,
  contourM: 0.05,
}));
