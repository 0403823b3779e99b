import type { AtlasDocument } from '../atlas/records.ts';
import type { Plan } from '../planner/plan.ts';

/** One question to the planner: plain data, so that it can cross to a worker and be hashed. */
export interface PlanQuestion {
  readonly document: AtlasDocument;
  readonly holeId: string;
  readonly ballId: string;
  readonly flagId: string;
  /** Shots simulated for each option in the final answer. */
  readonly shotsPerOption: number;
  readonly seed: number;
}

/** Calls of the planning worker, as name -> [input, output]. */
export interface PlanningCalls {
  plan: [PlanQuestion, Plan];
}

/** Shots for each option of a firm plan: a standard error near a hundredth of a stroke. */
export const USUAL_SHOTS = 400;
/** Any number would do; always the same one, so that the window and the command line give the same plan. */
export const USUAL_SEED = 1;
