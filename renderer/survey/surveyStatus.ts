import { createStore } from 'zustand/vanilla';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { Ground } from './useGround.ts';

/** What the status bar tells of the place under the pointer. */
export interface SurveyStatus {
  readonly pointer: PlanePoint | null;
  readonly ground: Ground | null;
  readonly document: AtlasDocument | null;
}

export const surveyStatus = createStore<SurveyStatus>(() => ({
  pointer: null,
  ground: null,
  document: null,
}));
