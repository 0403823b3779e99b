import { createStore } from 'zustand/vanilla';
import type { HeldPlace } from '../../shared/planner/movedScene.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { SwitchPoints } from '../../shared/planner/switchPoints.ts';
import type { ReliefDrawing } from '../../shared/plate/relief.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

export type Held = HeldPlace;

/** What is worked out from the document and the session; never saved, always made again. */
export interface Derived {
  readonly scene: Scene | null;
  /** False while the ground is still being fitted: the scene then stands on level ground, or on what was there before. */
  readonly groundReady: boolean;
  /** Slopes and heights as drawn; null until they are there. */
  readonly relief: ReliefDrawing | null;
  /** Why the hole cannot be planned, or null. */
  readonly sceneTrouble: TroubleWords | null;
  /** What the hand holds, where it was taken up last. */
  readonly held: Held | null;
  readonly ballId: string | null;
  readonly flagId: string | null;
  readonly plan: Plan | null;
  /** `coarse` has only the shots near the best, each tried less often, or a coarse map, and is not yet firm. */
  readonly stage: 'none' | 'coarse' | 'firm';
  /** Whether the plan shown is from before a change, and the one that was to take its place on its way or given up. */
  readonly stale: false | 'refreshing' | 'givenUp';
  /** Whether the plan shown is the first answer and somebody gave up the firm one. */
  readonly stopped: boolean;
  /** Share of the firm answer done, or null when nothing runs. */
  readonly progress: number | null;
  readonly planTrouble: TroubleWords | null;
  /** What would change the choice of the plan shown; null until that is worked out. */
  readonly switchPoints: SwitchPoints | null;
  readonly switchShare: number | null;
}

/** As long as nothing is planned. */
export const noPlan = {
  plan: null,
  stage: 'none',
  stale: false,
  stopped: false,
  progress: null,
  planTrouble: null,
  switchPoints: null,
  switchShare: null,
} as const satisfies Partial<Derived>;

export const derivedStore = createStore<Derived>(() => ({
  scene: null,
  groundReady: false,
  relief: null,
  sceneTrouble: null,
  held: null,
  ballId: null,
  flagId: null,
  ...noPlan,
}));
