import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Plan } from '../../shared/planner/plan.ts';

/** All balls of a hole to one of its flags: one piece of work, since they share the map of the putts to that flag. */
export interface PlanTask {
  readonly holeId: string;
  readonly flagId: string;
  readonly ballIds: readonly string[];
}

/** What every task of one run has in common, given to a worker when it is started. */
export interface PlanRun {
  readonly document: AtlasDocument;
  readonly shotsPerOption: number;
  readonly seed: number;
}

/** What a worker says back, one message for each ball and one at the end of its task or on its failure. */
export type PlanMessage =
  | { readonly kind: 'plan'; readonly plan: Plan }
  | { readonly kind: 'unplanned'; readonly problem: ProblemParts }
  | { readonly kind: 'done' }
  | { readonly kind: 'problem'; readonly problem: ProblemParts };

/** An InputProblem as plain data: a class does not cross between threads. */
export interface ProblemParts {
  readonly code: string;
  readonly message: string;
  readonly place: string;
  readonly remedy: string;
}
